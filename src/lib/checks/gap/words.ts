import { joinWords, stopWords, switchedRoads, type Yard } from '../../yard';
import type { Breach, GapProof, States } from './proof';
import { handsWords } from './settings';

/** A whole number with thin spaces, at which no line breaks, between its thousands. */
export const countText = (count: bigint): string =>
  count.toString().replace(/\B(?=(\d{3})+$)/g, '\u202f');

const counted = (count: number, one: string, many: string): string =>
  `${count} ${count === 1 ? one : many}`;

function settingsWords(controls: States['controls']): string {
  const [first] = controls;
  if (!first) return '1 setting, for there are no switches,';
  return first.stands.length > 2
    ? `${first.stands.length} stands of the selector`
    : `2^${controls.length} settings of ${counted(controls.length, 'switch', 'switches')}`;
}

/** How the states are counted, in words. */
export const statesWords = ({ controls, moments, plugs, all }: States): string =>
  `${settingsWords(controls)} × ${counted(moments, 'place', 'places')} of deck and pin` +
  `${plugs === 2 ? ' × 2 for the plug, in or out' : ''} = ${countText(all)} ${all === 1n ? 'state' : 'states'}`;

/** How many states of all are unsafe. */
export const unsafeText = ({ unsafe }: GapProof, states: States): string =>
  `${countText(unsafe)} of ${countText(states.all)} states`;

/** The deck and pin of a breach, as somebody at the deck says it. */
function deckText(yard: Yard, { deckMm, pin }: Breach): string {
  return pin === 'home'
    ? `the pin is home where ${stopWords(yard, deckMm)}`
    : `the pin is out with the deck ${Math.round(Math.abs(deckMm))} mm north`;
}

/** The state of a breach, as a clause. */
export function breachWords(yard: Yard, breach: Breach): string {
  const { hands, plug, across } = breach;
  const set = handsWords(yard, hands);
  const parts = [
    deckText(yard, breach),
    ...(set.length === 0 && switchedRoads(yard).length > 0 ? ['every switch may be off'] : set),
    ...(plug === 'out' ? ['the plug is out'] : []),
    ...across.map(({ fixed, deckRoad }) => `a loco stands across ${fixed} and ${deckRoad}`)
  ];
  return joinWords(parts, 'and');
}

/** What no wiring can keep from happening; a proof of a deck that moves holds only where none of it does. */
export const assumptions: readonly string[] = [
  'No loco coasts on, or is pushed, once its road is dead.',
  'Nobody pulls the pin or slides the deck under a moving loco.',
  'Nobody drives while the pin is out.',
  'A pin that is home holds the deck in line with its hole.',
  'The yard is wired as it is drawn here.'
];
