import { groundOf, statesOf } from '../../src/lib/checks';
import { madeBy } from '../../src/lib/checks/gap/count';
import { closesLoop } from '../../src/lib/checks/gap/loop';
import { casesOf, type Moment } from '../../src/lib/checks/gap/moments';
import { plainNetwork } from '../../src/lib/checks/gap/network';
import { handsOf, sceneHands, type Setting } from '../../src/lib/checks/gap/settings';
import { wiringOf } from '../../src/lib/checks/gap/wiring';
import { solve } from '../../src/lib/circuit';
import {
  admit,
  circuitOf,
  faultsOf,
  fit,
  once,
  roads,
  SceneSchema,
  YardSchema,
  type Fault,
  type Yard
} from '../../src/lib/yard';
import { drawFrom, pick, whole } from '../circuit/random-numbers';

const ground = once(groundOf);

export interface State {
  readonly yard: Yard;
  readonly moment: Moment;
  readonly plug: 'in' | 'out';
  readonly setting: Setting;
  readonly faults: readonly Fault[];
}

/** Greatest volts on a road that ends in the gap, by the engine: a loco is held on every road, the knob is full. */
export function engineVolts({ yard, moment, plug, setting, faults }: State): number {
  const { controls } = ground(yard);
  const scene = fit(
    'scene',
    yard,
    admit('scene', SceneSchema, {
      ...sceneHands(handsOf(controls, setting)),
      controller: 1,
      deck: moment.place.deckMm,
      pin: moment.pin,
      plug,
      faults: [...faults]
    })
  );
  const circuit = circuitOf(yard, scene);
  const motors = roads(yard).map((road) => ({
    kind: 'motor' as const,
    id: `motor on ${road}`,
    a: `feed rail ${road}`,
    b: `return rail ${road}`,
    ohms: 20,
    emf: 0
  }));
  const solution = solve({ ...circuit, elements: [...circuit.elements, ...motors] });
  const volts = moment.place.open.map(({ road }) => 20 * solution.amps(`motor on ${road}`));
  return Math.max(0, ...volts.map(Math.abs));
}

/** Whether some road that ends in the gap is live, by the proof, no loco across a joint. */
export function proved({ yard, moment, plug, setting, faults }: State): boolean {
  const plain = plainNetwork(wiringOf({ ...ground(yard), plug, faults }));
  return casesOf(plain, moment, []).some((each) => closesLoop(each, madeBy(plain.wiring, setting)));
}

/** Yards of one size in every return and switching, their running road straight and interlocked. */
export const yardsOf = (deckRoads: number, stablingRoads: number): readonly Yard[] =>
  (['chain', 'ring', 'star'] as const).flatMap((home) =>
    (['toggles', 'rotary', 'pushes'] as const).flatMap((switching) =>
      (['direct', 'interlocked'] as const).map((runningRoad) =>
        admit('yard', YardSchema, {
          deckRoads,
          stablingRoads,
          return: home,
          switching,
          runningRoad
        })
      )
    )
  );

/** One state in a hundred, drawn with a seed, at most this many for each yard. */
export function drawn(yards: readonly Yard[], faulty: boolean, most = Infinity): readonly State[] {
  const draw = drawFrom(20);
  return yards.flatMap((yard) => {
    const { moments, plugs, controls } = ground(yard);
    const faults = faultsOf(yard);
    const all = Number(statesOf(ground(yard)).all) * (faulty ? faults.length : 1);
    const count = Math.min(most, Math.ceil(all / 100));
    return Array.from({ length: count }, () => ({
      yard,
      moment: pick(draw, moments),
      plug: pick(draw, plugs),
      setting: controls.map(({ stands }) => whole(draw, 0, stands.length - 1)),
      faults: faulty ? [pick(draw, faults)] : []
    }));
  });
}

/** Volts between places of one bus of wires: what a proof that takes wires as perfect leaves out. */
export const WIRE_VOLTS = 0.2;
