import { gapWords } from '../motion';
import { because, way } from '../predict';
import {
  CENTRE_VOLTS,
  editWords,
  feedOf,
  holes,
  isHeld,
  joinWords,
  knobWords,
  locoIn,
  read,
  runsTo,
  secondVolts,
  selectorWords,
  sentence,
  shown,
  stopWords,
  type Action,
  type Edit,
  type Scene,
  type Yard
} from '../yard';
import type { View } from './session.svelte';
import { unique } from './unique';

/** What hands just did: "Road B on.", "Knob 7.2 V east." */
export function didWords(yard: Yard, before: Scene, action: Action): string {
  const pushes = yard.switching === 'pushes';
  const thrown = Object.entries(action.switch ?? {}).map(([road, on]) =>
    pushes ? `Push ${road} ${on ? 'held' : 'let go'}.` : `Road ${road} ${on ? 'on' : 'off'}.`
  );
  const turned =
    action.selector === undefined ? [] : [`Selector ${selectorWords(action.selector)}.`];
  const knob =
    action.controller === undefined
      ? []
      : [`Knob ${knobWords(action.controller, yard.supply.volts)}.`];
  const knob2 =
    action.second === undefined ? [] : [`Knob 2 ${knobWords(action.second, secondVolts(yard))}.`];
  return [
    ...thrown,
    ...turned,
    ...knob,
    ...knob2,
    ...(action.supply === undefined ? [] : [`Supply ${action.supply}.`]),
    ...deckWords(yard, action),
    ...coupleWords(action),
    ...editChanges(before.edits, action.edits)
  ].join(' ');
}

function deckWords(yard: Yard, { deck, pin, plug }: Action): readonly string[] {
  const hole = holes(yard).find(({ name, deckMm }) => deck === name || deck === deckMm);
  const faces = hole ? stopWords(yard, hole.deckMm) : 'The deck faces nothing';
  return [
    ...(deck === undefined ? [] : [`${faces}.`]),
    ...(pin === undefined ? [] : [`Pin ${pin}.`]),
    ...(plug === undefined ? [] : [`Plug ${plug}.`])
  ];
}

const coupleWords = ({ couple = {} }: Action): readonly string[] =>
  Object.entries(couple).map(([name, to]) =>
    to === 'none' ? `${name} uncoupled.` : `${name} coupled to ${to}.`
  );

function editChanges(
  before: readonly Edit[],
  after: readonly Edit[] | undefined
): readonly string[] {
  if (!after) return [];
  const has = (list: readonly Edit[], edit: Edit) =>
    list.some((each) => JSON.stringify(each) === JSON.stringify(edit));
  const made = after
    .filter((edit) => !has(before, edit) && !isHeld(edit))
    .map((edit) => sentence(editWords(edit)));
  if (made.length === 0 && after.some((edit) => isHeld(edit) && !has(before, edit))) return [];
  const undone = before
    .filter((edit) => !has(after, edit))
    .map((edit) => `Undone: ${editWords(edit)}.`);
  return made.length > 0 ? made : undone;
}

/** Whether all that was done is to hold a meter elsewhere, which moves no loco. */
export const isMeasuring = (before: Scene, after: Scene): boolean => {
  const rest = ({ edits }: Scene) =>
    JSON.stringify(edits.filter((edit) => !('volts' in edit || 'ohms' in edit)));
  const state = ({ controller, supply, switches, deck, pin, plug }: Scene) =>
    JSON.stringify([controller, supply, switches, deck, pin, plug]);
  return (
    before.edits !== after.edits && rest(before) === rest(after) && state(before) === state(after)
  );
};

/** What the test instruments show, where they are newly held or show something else than before. */
export function probeWords(
  before: Pick<View, 'reading'>,
  after: Pick<View, 'reading'>
): readonly string[] {
  const old = shown(before.reading);
  return shown(after.reading).flatMap(({ id, kind, name, value, where, note }) => {
    const was = old.find((each) => each.id === id);
    const moved = was?.where !== where;
    // Of a lamp the locos are told as well: its amps and places are left to the drawing.
    if (kind === 'test lamp') {
      const look = (text = '') => text.split(',')[0];
      return moved || look(was.value) !== look(value) ? [`${name}: ${look(value)}.`] : [];
    }
    if (moved) return [`${name}: ${value} ${where}.${note === '' ? '' : ` ${NOTHING}`}`];
    return was.value === value ? [] : [`${name}: ${value}.`];
  });
}

const NOTHING = 'One end is joined to nothing.';

/** What the locos do after it, and why those that stay do not move. */
export function seenWords(yard: Yard, before: Scene, after: Scene): string {
  const fell = gapWords(yard, after);
  if (fell !== '') return fell;
  const seen = Object.entries(after.locos).map(([name, at]) => {
    const went = way({ yard, before, after }, name);
    const held = went !== 'stays' && !runsTo(at);
    return {
      name,
      went: held ? `goes ${went} to the end and stalls` : `moves ${went}`,
      stays: went === 'stays'
    };
  });
  const moves = seen.filter((each) => !each.stays).map(({ name, went }) => `${name} ${went}`);
  const still = seen.filter((each) => each.stays).map(({ name }) => name);
  return [
    ...(moves.length > 0 ? [`${joinWords(moves, 'and')}.`] : []),
    ...stayWords(yard, after, still)
  ].join(' ');
}

/** Locos told of with their reason; the rest are only named, so that a message stays short. */
const WITH_REASON = 2;

function stayWords(yard: Yard, scene: Scene, still: readonly string[]): readonly string[] {
  const reasons = still.map((name) => stayReason(yard, scene, name));
  return unique(reasons).map((reason, index) => {
    const names = still.filter((_, at) => reasons[at] === reason);
    const stay = `${joinWords(names, 'and')} ${names.length > 1 ? 'stay' : 'stays'}`;
    return index < WITH_REASON ? `${stay}: ${reason}.` : `${stay}.`;
  });
}

/** More than this flows in a loco although its own row is open: by a lamp, say, A. */
const TRICKLE_AMPS = 0.002;

function stayReason(yard: Yard, scene: Scene, name: string): string {
  const reading = read(yard, scene);
  const standing = scene.locos[name];
  const road = standing?.road as string;
  const why = reading.why(road);
  if (why.state === 'one ink') return 'one ink on both rails';
  if (Math.abs(reading.amps(name)) > TRICKLE_AMPS && why.state === 'open')
    return 'too few volts to start';
  if (why.state === 'open')
    return why.breaks.length > 0 ? `open at ${why.breaks[0]}` : 'no way round';
  if (scene.supply === 'off') return 'the supply is off';
  if (Math.abs(reading.between(feedOf(yard, road), 'return') ?? 0) < CENTRE_VOLTS)
    return reading.supplyShorted ? 'the supply is shorted' : 'the knob is at centre';
  return Math.abs(reading.amps(name)) > locoIn(yard, name).lightAmps
    ? 'stalled at the end of its road'
    : 'too few volts to start';
}

/** Why each loco asked about did what it did, one sentence each, the same reason once. */
export const reasonsFor = (
  played: Parameters<typeof because>[0],
  locos: readonly string[]
): string => [...new Set(locos.map((name) => because(played, name)))].join(' ');
