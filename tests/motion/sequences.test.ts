import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driveTo, isOver, start } from '../../src/lib/motion';
import {
  act,
  eastMm,
  holes,
  BorderError,
  locoNames,
  locosOf,
  locoIn,
  locoOf,
  motorConstant,
  RefusedError,
  roadNamed,
  roads,
  toggleRoads,
  trainWith,
  travel,
  vehicleIn,
  vehicles,
  type Action,
  type Scene,
  type Yard
} from '../../src/lib/yard';
import { sceneOf, yardOf, type Moment, type SceneInput } from '../yard/build';

/** What comes next: something that hands do, or seconds that go by. */
type Next = { readonly hands: Action } | { readonly seconds: number };

const yards: readonly Yard[] = [
  yardOf({ deckRoads: 5, stablingRoads: 4 }),
  yardOf({ deckRoads: 5, stablingRoads: 4, runningRoad: 'interlocked', return: 'ring' }),
  yardOf({
    deckRoads: 2,
    stablingRoads: 2,
    interlocked: false,
    return: 'star',
    locos: { Knot: { shape: 'tank', lengthMm: 60 }, 'Ruff 2': { shape: 'diesel', ohms: 9 } }
  }),
  yardOf({ deckRoads: 3, runningRoad: true, roadLengthMm: 400, runningLengthMm: 400 }),
  yardOf({
    deckRoads: 2,
    stablingRoads: 1,
    runningRoad: 'interlocked',
    cuts: [
      { road: 'Q', atMm: 2100 },
      { road: 'A', rail: 'return', atMm: 600 },
      { road: 'B', rail: 'both', atMm: 500 }
    ],
    endStops: ['1']
  })
];

function anyHands(yard: Yard): fc.Arbitrary<Action> {
  const hole = fc.constantFrom(...holes(yard).map(({ name }) => name));
  const mm = fc.integer({ min: Math.ceil(travel(yard).least), max: 0 });
  const pin = fc.constantFrom('home' as const, 'out' as const);
  const toggle = fc.tuple(fc.constantFrom(...toggleRoads(yard)), fc.boolean());
  return fc.oneof(
    toggle.map(([road, on]) => ({ switch: { [road]: on } })),
    fc.integer({ min: -100, max: 100 }).map((percent) => ({ controller: percent / 100 })),
    fc.record({ deck: fc.oneof(hole, mm) }),
    fc.record({ deck: hole, pin }),
    fc.record({ pin }),
    fc.constantFrom('none', ...locoNames, 'coach').map((to) => ({ couple: { wagon: to } })),
    fc.record({ plug: fc.constantFrom('in' as const, 'in' as const, 'out' as const) })
  );
}

const anyNext = (yard: Yard): fc.Arbitrary<Next> => {
  const seconds = fc.constantFrom(0, 0.05, 0.2, 0.5, 2);
  return fc.oneof(
    anyHands(yard).map((each) => ({ hands: each })),
    seconds.map((each) => ({ seconds: each }))
  );
};

/** Up to three locos, knob and most toggles on: a yard in which something happens. */
const anyStart = (yard: Yard): fc.Arbitrary<Scene> =>
  fc
    .tuple(
      fc.shuffledSubarray(
        [...locosOf(yard)].map(({ name }) => name),
        { minLength: 1, maxLength: 3 }
      ),
      fc.shuffledSubarray([...roads(yard)], { minLength: roads(yard).length }),
      fc.constantFrom(-1, -0.6, 0.6, 1),
      fc.constantFrom('behind' as const, 'ahead' as const),
      fc.constantFrom('behind' as const, 'ahead' as const, 'road' as const)
    )
    .map(([names, places, controller, coach, wagon]) => {
      const switches = Object.fromEntries(toggleRoads(yard).map((road) => [road, road !== 'B']));
      const locos: SceneInput['locos'] = Object.fromEntries(
        names.slice(0, places.length).map((name, index) => [name, places[index] as string])
      );
      const free = places[names.length] ?? places[0];
      const stock: SceneInput['stock'] = {
        coach: { [coach]: names[0] },
        wagon: wagon === 'road' ? { road: free as string } : { [wagon]: 'coach' }
      };
      try {
        return sceneOf(yard, { switches, locos, stock, controller });
      } catch (error) {
        // No rails for the whole train: the locos alone.
        if (!(error instanceof BorderError)) throw error;
        return sceneOf(yard, { switches, locos, controller });
      }
    });

/** What a long sequence takes, and a short one that hands begin. */
const STEPS = 25;
interface Sequence {
  readonly yard: Yard;
  readonly scene: Scene;
  readonly nexts: readonly Next[];
}
const sequences = (nextsOf: (yard: Yard) => fc.Arbitrary<Next[]>): fc.Arbitrary<Sequence> =>
  fc
    .constantFrom(...yards)
    .chain((yard) =>
      fc.record({ yard: fc.constant(yard), scene: anyStart(yard), nexts: nextsOf(yard) })
    );
const long = sequences((yard) => fc.array(anyNext(yard), { minLength: STEPS, maxLength: STEPS }));
const short = sequences((yard) =>
  fc
    .tuple(anyHands(yard), fc.constantFrom(0.01, 0.05, 0.1))
    .map(([hands, seconds]) => [{ hands }, { seconds }])
);

/** The scene after one step; hands that are refused leave it as it was, and nothing else may be thrown. */
function step(yard: Yard, scene: Scene, next: Next): Scene {
  if ('seconds' in next) return driveTo(yard, start(scene), next.seconds).scene;
  try {
    return act(yard, scene, next.hands);
  } catch (error) {
    if (error instanceof RefusedError) return scene;
    throw error;
  }
}

/** Every scene of a sequence, the first one too. */
const play = (yard: Yard, scene: Scene, nexts: readonly Next[]): readonly Scene[] =>
  nexts.reduce<Scene[]>((all, next) => [...all, step(yard, all.at(-1) as Scene, next)], [scene]);

/** Speed at which the back-EMF of a vehicle's loco is all the controller has, m/s: more would be made out of nothing. */
function fastest(yard: Yard, scene: Scene, name: string): number {
  const loco = locoOf(trainWith(scene, name));
  return loco === undefined ? 0 : yard.supply.volts / motorConstant(locoIn(yard, loco));
}

/** Energy of motion, J. */
const motionEnergy = (yard: Yard, scene: Scene): number =>
  Object.entries(vehicles(scene)).reduce(
    (sum, [name, { speed }]) => sum + 0.5 * vehicleIn(yard, name).mass * speed * speed,
    0
  );

/** What is wrong with a scene, in words. */
function faults({ yard, scene }: Moment): readonly string[] {
  const { least, most } = travel(yard);
  const inTravel = scene.deck >= least && scene.deck <= most;
  const entries = Object.entries(vehicles(scene));
  const numbers = entries.flatMap(([, at]) => [at.atMm, at.speed]);
  const bad = entries.flatMap(([name, { road, atMm, speed, fallen }]) => {
    const on = atMm >= 0 && atMm <= roadNamed(yard, road).lengthMm;
    const slow = Math.abs(speed) <= fastest(yard, scene, name);
    return [
      ...(on ? [] : [`${name} off the rails of ${road} at ${String(atMm)} mm`]),
      ...(slow ? [] : [`${name} at ${String(speed)} m/s`]),
      ...(fallen && speed !== 0 ? [`${name} runs in the gap`] : [])
    ];
  });
  return [
    ...bad,
    ...(inTravel ? [] : [`deck at ${String(scene.deck)} mm`]),
    ...([scene.deck, scene.controller, ...numbers].every(Number.isFinite) ? [] : ['no number'])
  ];
}

/** Locos that went further than they can in these seconds, over joints too. */
const jumps = (yard: Yard, [before, after]: [Scene, Scene], seconds: number): readonly string[] =>
  Object.entries(vehicles(before)).flatMap(([name, at]) => {
    const most = 1000 * seconds * fastest(yard, before, name);
    const gone = eastMm(yard, vehicles(after)[name] ?? at) - eastMm(yard, at);
    return Math.abs(gone) > most + 1e-9 ? [`${name} by ${String(gone)} mm`] : [];
  });

/** Locos on one road that stand in one another. */
function overlaps({ yard, scene }: Moment): readonly string[] {
  const all = Object.entries(vehicles(scene)).filter(([, { fallen }]) => !fallen);
  return all.flatMap(([name, at], index) =>
    all.slice(index + 1).flatMap(([other, there]) => {
      const apart = Math.abs(at.atMm - there.atMm);
      const room = (vehicleIn(yard, name).lengthMm + vehicleIn(yard, other).lengthMm) / 2;
      return at.road === there.road && apart < room - 1e-6 ? [`${name} in ${other}`] : [];
    })
  );
}

/** What happened in all sequences. */
const seen = { joints: 0, stockFalls: 0, falls: 0, refused: 0, steps: 0 };

/** Plays a sequence, and again: every invariant holds in every scene of it. */
function keeps({ yard, scene, nexts }: Sequence): void {
  const all = play(yard, scene, nexts);
  expect(all).toHaveLength(nexts.length + 1);
  expect(all.flatMap((each) => faults({ yard, scene: each }))).toEqual([]);
  expect(all.flatMap((each) => overlaps({ yard, scene: each }))).toEqual([]);
  nexts.forEach((next, index) => {
    const [before, after] = [all[index] as Scene, all[index + 1] as Scene];
    seen.steps++;
    if ('seconds' in next) drove(yard, [before, after], next.seconds);
    else handled([before, after], next.hands);
  });
  const end = all.at(-1) as Scene;
  if (isOver(end)) seen.falls++;
  expect(play(yard, scene, nexts).at(-1)).toEqual(end);
  expect(sceneOf(yard, JSON.parse(JSON.stringify(end)))).toEqual(end);
}

function drove(yard: Yard, [before, after]: [Scene, Scene], seconds: number): void {
  expect({ ...after, locos: before.locos, stock: before.stock }).toEqual(before);
  if (isOver(before)) expect(vehicles(after)).toEqual(vehicles(before));
  const { volts, limitAmps } = yard.supply;
  const most = motionEnergy(yard, before) + volts * limitAmps * seconds;
  expect(motionEnergy(yard, after)).toBeLessThanOrEqual(most + 1e-12);
  expect(jumps(yard, [before, after], seconds)).toEqual([]);
  const [was, is] = [vehicles(before), vehicles(after)];
  for (const name of Object.keys(was)) {
    if (is[name]?.road !== was[name]?.road) seen.joints++;
    if (name in before.stock && is[name]?.fallen) seen.stockFalls++;
  }
}

function handled([before, after]: [Scene, Scene], hands: Action): void {
  if (before === after) seen.refused++;
  expect(after.locos).toEqual(before.locos);
  if (before.pin === 'home' && hands.pin === undefined) expect(after.deck).toBe(before.deck);
}

const RUNS = { long: 440, short: 9560 };

describe('10 000 sequences of random actions', { timeout: 180_000 }, () => {
  test.each([
    ['long', long],
    ['short', short]
  ] as const)(
    '%s ones keep every invariant; played again they end the same, bit for bit; saved they come back',
    (kind, any) => {
      const before = seen.steps;
      fc.assert(fc.property(any, keeps), { numRuns: RUNS[kind], seed: 13 });
      expect(seen.steps - before).toBe(RUNS[kind] * (kind === 'long' ? STEPS : 2));
    }
  );

  test('were eventful: joints were crossed, locos fell, hands were refused', () => {
    expect(seen.joints).toBeGreaterThan(50);
    expect(seen.falls).toBeGreaterThan(20);
    expect(seen.stockFalls).toBeGreaterThan(5);
    expect(seen.refused).toBeGreaterThan(200);
  });
});
