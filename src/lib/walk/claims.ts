import { beyond, isOn, liveRoads, roads, switchedRoads, type Scene, type Yard } from '../yard';
import { listOf, namesIn } from './plain';

const STATES = 'live|dead|safe|on|off';
const VERB = "(is|are|stays?|remains?|becomes?|goes)(n't)?";

/** What a text says of roads. */
interface Claim {
  readonly roads: readonly string[];
  readonly state: string;
  readonly is: boolean;
}

/** The claims of one sentence about roads: "road A is live", "roads B and C are dead", "all roads are safe". */
function claimsIn(yard: Yard, sentence: string): readonly Claim[] {
  const all = roads(yard);
  const rest = `\\s+(?:all |both |now |still |also |again )*(not )?(?:all |both |now |still )*(${STATES})\\b`;
  const one = new RegExp(
    `(?:[Rr]oads?|[Rr]ows?|[Tt]oggles?)\\s+(${listOf(all)})\\s+${VERB}${rest}`,
    'g'
  );
  const whole = new RegExp(`\\b(?:all|every|each)(?: the)? roads?\\s+${VERB}${rest}`, 'gi');
  const only = /\bonly\b/i.test(sentence);
  const said = [...sentence.matchAll(one)].flatMap(
    ([, list = '', , not, no, state = '']): Claim[] => {
      const about = namesIn(list, all);
      const is = !not && !no;
      const others = all.filter((road) => !about.includes(road));
      return [
        { roads: about, state, is },
        ...(only && is && state === 'live' ? [{ roads: others, state, is: false }] : [])
      ];
    }
  );
  const every = [...sentence.matchAll(whole)].map(([, , not, no, state = '']): Claim => ({
    roads: all,
    state,
    is: !not && !no
  }));
  return [...said, ...every];
}

/** Whether a loco on a live road can leave its rails where nothing faces it. */
const isOpen = (yard: Yard, scene: Scene, road: string): boolean =>
  (['west', 'east'] as const).some((end) => beyond(yard, scene.deck, road, end).kind === 'gap');

/** Roads of which a text claims what the engine does not find in that scene, each with what the engine says. */
export function falseClaims(yard: Yard, scene: Scene, text: string): readonly string[] {
  const sentences = text.split(/(?<=[.!?;:])\s+/);
  const claims = sentences.flatMap((sentence) => claimsIn(yard, sentence));
  const vague = sentences.some(
    (sentence) => /\bsafe\b/i.test(sentence) && claimsIn(yard, sentence).length === 0
  );
  if (claims.length === 0 && !vague) return [];
  const live = liveRoads(yard, scene);
  const isSo = (road: string, state: string): boolean => {
    if (state === 'live') return live.has(road);
    if (state === 'dead') return !live.has(road);
    if (state === 'safe') return !live.has(road) || !isOpen(yard, scene, road);
    return isOn(yard, scene, road) === (state === 'on');
  };
  const sayable = (road: string, state: string) =>
    !/^(on|off)$/.test(state) || switchedRoads(yard).includes(road);
  const found = claims.flatMap(({ roads: about, state, is }) =>
    about
      .filter((road) => sayable(road, state) && isSo(road, state) !== is)
      .map((road) => `road ${road} is ${is ? opposite(state) : state} here`)
  );
  const unsafe = vague ? roads(yard).filter((road) => !isSo(road, 'safe')) : [];
  return [...new Set([...found, ...unsafe.map((road) => `road ${road} is not safe here`)])];
}

const opposite = (state: string): string =>
  ({
    live: 'dead',
    dead: 'live',
    safe: 'not safe: it is live and ends at the gap',
    on: 'off',
    off: 'on'
  })[state] ?? state;
