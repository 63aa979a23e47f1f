import {
  isLoad,
  solve,
  trace,
  type Circuit,
  type Element,
  type Solution,
  type Trace
} from '../circuit';
import { apply, circuitOf } from './apply';
import { lampRoads, lampState, type LampState } from './lamps';
import { floating, isSupplyShorted, levels, type Level } from './levels';
import { isMeterRun, isProbe, litBy, ohmsOf, type Lit } from './probe';
import { locoIn, startingVolts, type Loco } from './locos';
import type { Run } from './runs';
import type { Scene } from './scene';
import { CENTRE_VOLTS, controllers, feedOf, feeds } from './second';
import { roads } from './road';
import { still, vehicles } from './vehicles';
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
  readonly scene: Scene;
  readonly runs: readonly Run[];
  readonly circuit: Circuit;
  /** Level of a node. */
  readonly level: (node: string) => Level;
  /** Volts between two nodes; undefined where they share no island. */
  readonly between: (a: string, b: string) => number | undefined;
  /** Volts across a part, loco or instrument, from its first end to its second; undefined where they share no island. */
  readonly volts: (id: string) => number | undefined;
  /** Ohms which the ohmmeter shows; Infinity is open, undefined without one. */
  readonly ohms: number | undefined;
  /** How the test lamp looks; undefined without one. */
  readonly testLamp: Lit | undefined;
  /** Amps through a part, loco or coach, in the direction in which its run is followed; 0 where a vehicle takes none. */
  readonly amps: (id: string) => number;
  /** Whether the controller, or the supply that two share, gives all it can. */
  readonly limiting: boolean;
  /** Names of the sources which give all they can. */
  readonly limits: readonly string[];
  /** Whether two controllers lay the common return on both poles of the supply that they share. */
  readonly supplyShorted: boolean;
  /** How the road's panel lamp looks; undefined where it has none. */
  readonly lamp: (road: string) => LampState | undefined;
  /** Why a road is as it is. */
  readonly why: (road: string) => Why;
}

type Knobs = Pick<Scene, 'controller' | 'second'>;

/** The scene with the supply on, the knobs at full and every loco held: what its wires could do. */
const atFull = (scene: Scene, knobs: Knobs = { controller: 1, second: 1 }): Scene => ({
  ...still(scene),
  ...knobs,
  supply: 'on'
});

const isWay = (element: Element): boolean =>
  !isLoad(element) &&
  element.kind !== 'source' &&
  !/^controller( 2)?$/.test(element.id) &&
  !isProbe(element.id);

/** The knobs with those at centre turned to full, the way of the other one: a shared supply stays whole. */
function turnedUp(scene: Scene, centred: readonly string[]): Knobs {
  const way = Math.sign(scene.controller || scene.second) || 1;
  return {
    controller: centred.includes('controller') ? way : scene.controller,
    second: centred.includes('controller 2') ? way : scene.second
  };
}

const wiring = ['switches', 'selector', 'pin', 'deck', 'plug', 'faults', 'edits'] as const;

/** Whether nothing but stock and knobs has changed from one scene to another. */
const isWiredAs = (a: Scene, b: Scene): boolean => wiring.every((key) => a[key] === b[key]);

/**
 * Reads a scene: wires it, sets its contacts, solves it. The runs of a reading of the same yard
 * `before` are taken over where its contacts stood as they do now.
 */
export function read(yard: Yard, scene: Scene, before?: Reading): Reading {
  const runs = before && isWiredAs(before.scene, scene) ? before.runs : apply(yard, scene);
  const circuit = circuitOf(yard, scene, runs);
  const solution = solve(circuit);
  const elements = new Set(circuit.elements.map(({ id }) => id));
  const absent = new Set(Object.keys(vehicles(scene)).filter((name) => !elements.has(name)));
  const centred = controllers(yard, scene)
    .filter(({ feed }) => Math.abs(solution.volts(feed) ?? 0) < CENTRE_VOLTS)
    .map(({ id }) => id);
  const shorted = isSupplyShorted(circuit);
  const up = centred.length > 0 && !shorted;
  const bare = runs.filter((run) => !isMeterRun(run));
  const asIs = !up && bare.length === runs.length;
  const moment = up ? atFull(scene, turnedUp(scene, centred)) : scene;
  const wiring = asIs ? circuit : circuitOf(yard, moment, bare);
  const all = levels(wiring, asIs ? solution : solve(wiring));
  const volts = (id: string) => {
    const { a, b } = circuit.elements.find((each) => each.id === id) as Element;
    return solution.between(a, b);
  };
  const has = (id: string) => runs.some((run) => run.id === id);
  return {
    scene,
    runs,
    circuit,
    level: (node) => all.get(node) ?? floating,
    between: (a, b) => solution.between(a, b),
    volts,
    ohms: has('meter ohms')
      ? ohmsOf(volts('meter ohms') ?? 0, solution.amps('meter ohms'))
      : undefined,
    testLamp: has('test lamp') ? litBy(volts('test lamp') ?? 0) : undefined,
    amps: (id) => (absent.has(id) ? 0 : solution.amps(id)),
    limiting: ['controller', 'supply'].some((id) => solution.limiting.includes(id)),
    limits: solution.limiting,
    supplyShorted: shorted,
    lamp: (road) =>
      lampRoads(yard).includes(road) ? lampState(solution.amps(`lamp ${road}`)) : undefined,
    why: (road) => why(yard, circuit, road)
  };
}

function why(yard: Yard, circuit: Circuit, road: string): Why {
  const path = (from: string, to: string) =>
    trace(circuit, from, to, { avoid: (element) => !isWay(element) });
  const legs = (feed: string, out: string, home: string) => ({
    feed: path(feed, `${out} rail ${road}`),
    return: path(`${home} rail ${road}`, 'return')
  });
  const own = feedOf(yard, road);
  const others = feeds(yard).filter((feed) => feed !== own);
  const straight = legs(own, 'feed', 'return');
  const swapped = legs(own, 'return', 'feed');
  const borrowed = others.flatMap((feed) => [
    legs(feed, 'feed', 'return'),
    legs(feed, 'return', 'feed')
  ]);
  const whole = [straight, swapped, ...borrowed].find(
    (each) => each.feed.joined && each.return.joined
  );
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
  const { volts } = held(yard, scene);
  return new Set(
    roads(yard).filter((road) => Math.abs(volts(road)) >= startingVolts(askedOn(yard, scene, road)))
  );
}

/** What a scene gives at full knob with every loco held. */
interface Held {
  /** Volts of a road's loco, or of a stand-in, from the feed rail to the return rail. */
  readonly volts: (road: string) => number;
  /** Amps through a part, without any stand-in. */
  readonly amps: (id: string) => number;
  /** Whether a controller gives all it can, without any stand-in. */
  readonly limiting: boolean;
}

/** The scene at full knob with every loco held: a stand-in is put on one empty road at a time. */
export function held(yard: Yard, scene: Scene): Held {
  const full = atFull(scene);
  const circuit = circuitOf(yard, full);
  const solution = solve(circuit);
  const between = (road: string, found: Solution) =>
    found.between(`feed rail ${road}`, `return rail ${road}`);
  return {
    volts(road) {
      const now = between(road, solution);
      // Rails of two islands, or of none, stay so with one loco between them: it carries nothing.
      if (now === undefined || standing(scene, road) !== undefined) return now ?? 0;
      return between(road, solve(withProbe(circuit, askedOn(yard, scene, road), road))) ?? 0;
    },
    amps: (id) => solution.amps(id),
    limiting: solution.limiting.some((id) => id !== 'lamp supply')
  };
}

const standing = (scene: Scene, road: string): string | undefined =>
  Object.entries(scene.locos).find(([, at]) => at.road === road && !at.fallen)?.[0];

const askedOn = (yard: Yard, scene: Scene, road: string): Loco =>
  locoIn(yard, standing(scene, road) ?? PROBE);

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
