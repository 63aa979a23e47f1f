import { describe, expect, test } from 'vitest';
import {
  breachScene,
  checks,
  defaultOptions,
  groundOf,
  proveFaults,
  proveGap,
  statesOf
} from '../../src/lib/checks';
import { hurtYard } from '../../src/lib/checks/gap/hurt';
import { soundOf } from '../../src/lib/checks/gap/sound';
import { faultsOf, liveRoads, read, type Yard } from '../../src/lib/yard';
import { brute, bruteMoments } from './brute';
import { momentsOf, options, yardOf, yards } from './every-yard';

/** Yards of which the proof and brute force say different things. */
const mismatches = (yards: readonly Yard[]): readonly Yard[] =>
  yards.filter((yard) => {
    const ground = groundOf(yard);
    const proof = proveGap(ground);
    const tried = brute(yard, undefined, momentsOf(yard));
    return (
      tried.states !== statesOf(ground).all ||
      tried.unsafe !== proof.unsafe ||
      tried.unsafeHome !== proof.unsafeHome ||
      [...tried.ends].sort().join() !==
        proof.breaches
          .map(({ road, end }) => `${road} ${end}`)
          .sort()
          .join()
    );
  });

const demo = { deckRoads: 5, stablingRoads: 4 };

describe('proveGap(ground)', () => {
  const small = yards(4, 3);
  const states = small.reduce((sum, yard) => sum + statesOf(groundOf(yard)).all, 0n);

  test(`equals brute force over all ${states} states of ${small.length} yards up to 4+3`, () => {
    expect(mismatches(small)).toEqual([]);
  }, 300_000);

  const ends = (['east', 'both', 'two west', 'two east'] as const).flatMap((runningEnds) =>
    (['direct', 'interlocked'] as const).flatMap((runningRoad, index) =>
      (['toggles', 'rotary'] as const).map((switching, nth) =>
        yardOf({
          runningEnds,
          runningRoad,
          switching,
          return: (['chain', 'ring', 'star'] as const)[index + nth],
          deckRoads: 1 + ((index + nth) % 2),
          stablingRoads: 1
        })
      )
    )
  );

  test(`equals brute force in ${ends.length} yards with running roads in the east and at both ends`, () => {
    expect(mismatches(ends)).toEqual([]);
  });

  const cuts = [
    [{ road: 'Q', atMm: 900 }],
    [{ road: 'Q', rail: 'both', atMm: 900 }],
    [{ road: 1, rail: 'return', atMm: 150 }],
    [
      { road: 'A', atMm: 400 },
      { road: 'R', rail: 'both', atMm: 500 }
    ]
  ].map((all, index) =>
    yardOf({
      deckRoads: 1 + (index % 2),
      stablingRoads: 1,
      runningRoad: index === 1 ? 'direct' : 'interlocked',
      return: index === 2 ? 'ring' : 'chain',
      cuts: all
    })
  );

  test(`equals brute force in ${cuts.length} yards with cut roads: a section alone meets the gap`, () => {
    expect(mismatches(cuts)).toEqual([]);
  });

  test('has its breaches confirmed by the engine: amps flow, and the loco would start', () => {
    const breaches = yards(2, 2).flatMap((yard) =>
      proveGap(groundOf(yard)).breaches.map((breach) => ({ yard, breach }))
    );
    for (const { yard, breach } of breaches) {
      const scene = breachScene(yard, breach);
      const reading = read(yard, scene);
      const words = JSON.stringify({ yard, breach });
      expect(Math.abs(reading.amps('Plover')), words).toBeGreaterThan(0.1);
      expect(liveRoads(yard, scene).has(breach.road), words).toBe(true);
    }
    expect(breaches.length).toBeGreaterThan(100);
  }, 120_000);
});

describe('proveFaults(ground)', () => {
  test('equals brute force under every single fault, every option, at 2+1', () => {
    const mismatches = options
      .map((some) => yardOf({ ...some, deckRoads: 2, stablingRoads: 1 }))
      .filter((_, index) => index % 7 === 0)
      .flatMap((yard) => {
        const ground = groundOf(yard);
        const moments = bruteMoments(yard);
        return faultsOf(yard).filter((fault) => {
          const tried = brute(yard, (s) => ({ ...s, faults: [fault] }), moments);
          const proof = proveGap(ground, [fault]);
          return tried.unsafe !== proof.unsafe || tried.unsafeHome !== proof.unsafeHome;
        });
      });
    expect(mismatches).toEqual([]);
  }, 300_000);

  test('equals brute force under every single fault, running roads at both ends, at 2+0', () => {
    const yard = yardOf({ deckRoads: 2, runningEnds: 'both', runningRoad: 'interlocked' });
    const ground = groundOf(yard);
    const moments = bruteMoments(yard);
    const all = faultsOf(yard);
    const tried = all.map((fault) => brute(yard, (s) => ({ ...s, faults: [fault] }), moments));
    const differing = all.filter((fault, index) => {
      const proof = proveGap(ground, [fault]);
      return tried[index]?.unsafe !== proof.unsafe || tried[index]?.unsafeHome !== proof.unsafeHome;
    });
    expect(all.length).toBeGreaterThan(50);
    expect(differing).toEqual([]);

    const every = [brute(yard, undefined, moments), ...tried];
    const sum = (of: 'states' | 'unsafe') => every.reduce((total, each) => total + each[of], 0n);
    const { states, unsafe } = proveFaults(ground);
    expect({ states, unsafe }).toEqual({ states: sum('states'), unsafe: sum('unsafe') });
  });

  test('a faulty pin contact of a cut running road finds its holes, as brute force does', () => {
    const yard = yardOf({
      deckRoads: 2,
      runningRoad: 'interlocked',
      cuts: [{ road: 'Q', rail: 'both', atMm: 900 }]
    });
    const ground = groundOf(yard);
    const moments = bruteMoments(yard);
    const faults = faultsOf(yard).filter((fault) => JSON.stringify(fault).includes('pin contact'));
    const counts = faults.map((fault) => {
      const { unsafe, unsafeHome } = proveGap(ground, [fault]);
      return { fault, unsafe, unsafeHome };
    });
    expect(counts).toEqual(
      faults.map((fault) => {
        const { unsafe, unsafeHome } = brute(yard, (s) => ({ ...s, faults: [fault] }), moments);
        return { fault, unsafe, unsafeHome };
      })
    );
    expect(new Set(counts.map(({ unsafe }) => unsafe)).size).toBeGreaterThan(1);
  });

  test('has every new breach confirmed by the engine with the fault in', () => {
    const found = [{}, { runningRoad: 'interlocked' }, { return: 'ring' }].flatMap((some) => {
      const yard = yardOf({ deckRoads: 2, stablingRoads: 2, ...some });
      return proveFaults(groundOf(yard)).faults.flatMap(({ fault, proof }) =>
        proof.breaches.map((breach) => ({ yard, fault, breach }))
      );
    });
    const dead = found.filter(({ yard, fault, breach }) => {
      const { between } = read(yard, breachScene(yard, breach, [fault]));
      const volts = between(`feed rail ${breach.road}`, `return rail ${breach.road}`) ?? 0;
      return !(Math.abs(volts) > 1e-6);
    });
    expect(dead.map(({ fault, breach }) => ({ fault, breach }))).toEqual([]);
    expect(found.length).toBeGreaterThan(500);
  }, 120_000);

  test('finds a welded running-hole contact in the improved yard, which nothing shows in everyday use', () => {
    const yard = yardOf({ ...demo, runningRoad: 'interlocked' });
    const { faults, good } = proveFaults(groundOf(yard));
    expect(good.unsafeHome).toBe(0n);
    const welded = faults.find(({ words }) => words === 'pin contact Q never opens');
    expect(welded?.breach).toMatchObject({ road: 'Q', end: 'east', pin: 'home' });
    expect(welded?.notice).toEqual({ dead: [], live: [] });
    const scene = breachScene(yard, welded?.breach as never, [welded?.fault as never]);
    expect(liveRoads(yard, scene).has('Q')).toBe(true);
  }, 60_000);
});

describe('the gap check', () => {
  const [check] = checks;
  const findings = (input: object) => check?.run(yardOf(input), defaultOptions) ?? [];

  test('finds in the demo yard that the Quay line stays live while no deck road faces it, and its cure', () => {
    const [first] = findings(demo);
    expect(first).toMatchObject({
      grade: 'must fix',
      where: ['Q']
    });
    expect(first?.amount).toMatch(
      /^11\.\d V on its rails, enough to start a loco; [\d\s]+ of [\d\s]+ states are unsafe$/
    );
    expect(first?.cure).toMatch(/running holes/);
    expect(
      findings({ ...demo, runningRoad: 'interlocked' }).map(({ grade }) => grade)
    ).not.toContain('must fix');
  });

  test('takes a stop that closes when nothing faces it for what it is: a loco is held there', () => {
    const grades = findings({ ...demo, endStops: ['Q'] }).map(({ grade }) => grade);
    expect(grades).toContain('fine');
    expect(grades).not.toContain('must fix');
    const welded = yardOf({ ...demo, runningRoad: 'interlocked', endStops: ['Q'] });
    const { breaches } = proveGap(groundOf(welded), [{ welded: 'pin contact Q' }]);
    expect(breaches.filter(({ road }) => road === 'Q')).toEqual([]);
  });

  test('proves the improved yard while the pin is home, with its assumptions in words', () => {
    const proved = findings({ ...demo, runningRoad: 'interlocked' }).find(
      ({ grade }) => grade === 'fine'
    );
    expect(proved?.amount).toMatch(/^0 unsafe states with the pin home/);
    expect(proved?.cure).toMatch(/coasts.*pushed.*pulls the pin or slides the deck/);
    expect(proved?.why).toMatch(/2\^11 settings of 11 switches × \d+ places/);
  });
});

describe('a feed bus that is cut where roads feed each other through wheels', () => {
  test('is counted exactly, by both ways of the proof, though there are very many ways', () => {
    const yard = yardOf({ deckRoads: 10, stablingRoads: 5, interlocked: false });
    const fault = { wireOff: 'feed link E-F' } as const;
    const ground = groundOf(yard);
    const { proof } = hurtYard(soundOf(ground), [fault]);
    const plain = proveGap(ground, [fault]);
    expect(plain.unsafe).toBe(proof.unsafe);
    expect(plain.unsafeHome).toBe(proof.unsafeHome);
    expect(proof.unsafe).toBeGreaterThan(0n);
  });
});
