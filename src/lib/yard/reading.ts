import { solve, trace, type Circuit, type Element, type Solution, type Trace } from '../circuit';
import { apply, circuitOf } from './apply';
import { floating, levels, type Level } from './levels';
import { locoNamed, startingVolts, type Loco } from './locos';
import type { Run } from './runs';
import type { Scene } from './scene';
import { roads } from './road';
import type { Yard } from './yard';

/** Why a road's rails are at the levels they are. */
export interface Why {
  /** `loop`: out and home are whole, by either rail. `open`: broken at `breaks`. `one ink`: both rails reach the same terminal only. */
  readonly state: 'loop' | 'open' | 'one ink';
  readonly feed: Trace;
  readonly return: Trace;
  /** Open places which keep the road dead, the feed's first. */
  readonly breaks: readonly string[];
}

/** What the engine says of a scene. */
export interface Reading {
  readonly runs: readonly Run[];
  readonly circuit: Circuit;
  /** Level of a node. */
  readonly level: (node: string) => Level;
  /** Volts between two nodes; undefined where they share no island. */
  readonly between: (a: string, b: string) => number | undefined;
  /** Amps through a part or loco, in the direction in which its run is followed. */
  readonly amps: (id: string) => number;
  /** Whether the controller gives all it can. */
  readonly limiting: boolean;
  /** Why a road is as it is. */
  readonly why: (road: string) => Why;
}

/** Below this the knob counts as at centre, V. Source: common practice. */
export const CENTRE_VOLTS = 0.05;

/** The scene with the knob at full and every loco held: what its wires could do. */
const atFull = (scene: Scene): Scene => ({
  ...scene,
  controller: 1,
  locos: Object.fromEntries(
    Object.entries(scene.locos).map(([name, at]) => [name, { ...at, speed: 0 }])
  )
});

const notLoad = (element: Element): boolean =>
  element.kind !== 'motor' && element.kind !== 'source';

/** Reads a scene: wires it, sets its contacts, solves it. */
export function read(yard: Yard, scene: Scene): Reading {
  const runs = apply(yard, scene);
  const circuit = circuitOf(yard, scene, runs);
  const solution = solve(circuit);
  const atCentre = Math.abs(solution.volts('feed') ?? 0) < CENTRE_VOLTS;
  const all = levels(circuit, atCentre ? solve(circuitOf(yard, atFull(scene), runs)) : solution);
  return {
    runs,
    circuit,
    level: (node) => all.get(node) ?? floating,
    between: (a, b) => solution.between(a, b),
    amps: (id) => (scene.locos[id]?.fallen ? 0 : solution.amps(id)),
    limiting: solution.limiting.includes('controller'),
    why: (road) => why(circuit, road)
  };
}

function why(circuit: Circuit, road: string): Why {
  const path = (from: string, to: string) =>
    trace(circuit, from, to, { avoid: (element) => !notLoad(element) });
  const legs = (out: string, home: string) => ({
    feed: path('feed', `${out} rail ${road}`),
    return: path(`${home} rail ${road}`, 'return')
  });
  const straight = legs('feed', 'return');
  const swapped = legs('return', 'feed');
  const whole = [straight, swapped].find((each) => each.feed.joined && each.return.joined);
  if (whole) return { state: 'loop', ...whole, breaks: [] };
  const crossed =
    (straight.feed.joined && swapped.feed.joined) ||
    (straight.return.joined && swapped.return.joined);
  const { feed, return: home } = possible(swapped) && !possible(straight) ? swapped : straight;
  const breaks = [feed, home].flatMap((leg) => (leg.joined ? [] : leg.breaks));
  return { state: crossed ? 'one ink' : 'open', feed, return: home, breaks };
}

/** Whether closing open places could make the loop whole. */
const possible = (legs: Pick<Why, 'feed' | 'return'>): boolean =>
  legs.feed.path.length > 0 && legs.return.path.length > 0;

/** The loco that stands in for any loco on an empty road. */
const PROBE = 'Plover';

/**
 * The roads that are live: at full knob a loco on them would have at least its starting voltage.
 * A loco that stands there is asked itself, an empty road gets a stand-in; all of them held still.
 */
export function liveRoads(yard: Yard, scene: Scene): ReadonlySet<string> {
  const full = atFull(scene);
  const circuit = circuitOf(yard, full);
  const solution = solve(circuit);
  return new Set(
    roads(yard).filter((road) => wouldStart({ scene: full, circuit, solution }, road))
  );
}

interface Held {
  readonly scene: Scene;
  readonly circuit: Circuit;
  readonly solution: Solution;
}

function wouldStart({ scene, circuit, solution: held }: Held, road: string): boolean {
  const [there] =
    Object.entries(scene.locos).find(([, at]) => at.road === road && !at.fallen) ?? [];
  const loco = locoNamed(there ?? PROBE);
  const solution = there ? held : solve(withProbe(circuit, loco, road));
  const volts = solution.between(`feed rail ${road}`, `return rail ${road}`) ?? 0;
  return Math.abs(volts) >= startingVolts(loco);
}

const withProbe = (circuit: Circuit, loco: Loco, road: string): Circuit => ({
  ...circuit,
  elements: [
    ...circuit.elements,
    {
      kind: 'motor',
      id: `stand-in on ${road}`,
      a: `feed rail ${road}`,
      b: `return rail ${road}`,
      ohms: loco.ohms,
      emf: 0
    }
  ]
});
