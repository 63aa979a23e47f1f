import {
  admit,
  fit,
  holes,
  locosOf,
  roadsOf,
  SceneSchema,
  switchedRoads,
  wholeRoads,
  type Action,
  type Hole,
  type Yard
} from '../yard';
import { playSequence } from './playSequence';

/** A movement from one road to the other across the deck's edge, as hands make it. */
export interface Working {
  readonly from: string;
  readonly to: string;
  /** The hole in which the pin is home. */
  readonly hole: string;
  /** Roads that are switched on for it, their sections each. */
  readonly on: readonly string[];
  readonly way: 'east' | 'west';
}

/** Knob for a movement: brisk, not full. Source: common practice. */
const KNOB = 0.6;

/** Both ways over the edge at a hole. */
function bothWays(yard: Yard, { name, fixed, deckRoad }: Hole): readonly Working[] {
  const bed = wholeRoads(yard).find((road) => road.name === fixed)?.bed;
  const sections = roadsOf(yard)
    .filter(({ whole }) => whole === fixed || whole === deckRoad)
    .map((road) => road.name);
  const on = switchedRoads(yard).filter((road) => sections.includes(road));
  const working = (from: string, to: string, way: Working['way']): Working => ({
    from,
    to,
    hole: name,
    on,
    way
  });
  const [onto, off] = bed === 'west' ? (['east', 'west'] as const) : (['west', 'east'] as const);
  return [working(fixed, deckRoad, onto), working(deckRoad, fixed, off)];
}

/** These roads switched on, and no others. */
function hands(yard: Yard, on: readonly string[]): Action {
  if (yard.switching === 'rotary') return { selector: on[0] ?? 'off' };
  const switches = switchedRoads(yard).map((road) => [road, on.includes(road)]);
  return switches.length > 0 ? { switch: Object.fromEntries(switches) } : { controller: 0 };
}

/** Whether a loco gets there, with nothing amiss, when hands do what a working says. */
export function works(yard: Yard, { from, to, hole, on, way }: Working): boolean {
  const [loco] = locosOf(yard);
  if (!loco) return false;
  const start = roadsOf(yard).filter(({ whole }) => whole === from);
  const road = start[Math.floor(start.length / 2)]?.name ?? from;
  const scene = fit(
    'working',
    yard,
    admit('working', SceneSchema, { locos: { [loco.name]: road } })
  );
  const played = playSequence(yard, scene, {
    steps: [
      {
        words: '',
        do: { deck: hole, pin: 'home', ...hands(yard, on) },
        drive: way === 'east' ? KNOB : -KNOB,
        until: { loco: loco.name, on: to },
        moves: []
      }
    ]
  });
  return played.every(({ findings }) => findings.length === 0);
}

/**
 * One movement of each kind that a yard has: onto the deck and off it at the first hole of each running
 * road, and of the stabling roads.
 */
export function workingsOf(yard: Yard): readonly Working[] {
  const kindOf = (fixed: string) => wholeRoads(yard).find(({ name }) => name === fixed)?.kind;
  const all = holes(yard);
  const firsts = all.filter(
    ({ fixed }, index) =>
      all.findIndex((each) =>
        kindOf(fixed) === 'stabling' ? kindOf(each.fixed) === 'stabling' : each.fixed === fixed
      ) === index
  );
  return firsts.flatMap((hole) => bothWays(yard, hole));
}
