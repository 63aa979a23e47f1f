import { describe, expect, test } from 'vitest';
import { groundOf, proveGap, tooManyPairs, type GapProof } from '../../src/lib/checks';
import { hurtYard } from '../../src/lib/checks/gap/hurt';
import { pairSteps } from '../../src/lib/checks/gap/pairs';
import { soundOf } from '../../src/lib/checks/gap/sound';
import { faultsOf, type Fault, type Yard, type YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';
import { brute, bruteMoments } from './brute';
import { result } from '../../src/lib/checks/result';

/** Every two faults of a yard that change a path. */
function pairsOf(yard: Yard): readonly (readonly [Fault, Fault])[] {
  const all = faultsOf(yard).filter((fault) => !('highOhms' in fault));
  return all.flatMap((one, index) => all.slice(index + 1).map((other) => [one, other] as const));
}

describe('two faults at once', () => {
  const small: readonly YardInput[] = [
    { deckRoads: 1, stablingRoads: 1 },
    { deckRoads: 2, stablingRoads: 1, runningRoad: 'interlocked' },
    { deckRoads: 2, stablingRoads: 1, switching: 'rotary', return: 'ring' },
    { deckRoads: 2, stablingRoads: 1, switching: 'pushes', return: 'star', interlocked: false }
  ];

  test.each(small.map((input) => [JSON.stringify(input), input] as const))(
    'the proof equals brute force over every state: %s',
    (_, input) => {
      const yard = yardOf(input);
      const sound = soundOf(groundOf(yard));
      const moments = bruteMoments(yard);
      const every = pairsOf(yard);
      // Sixty or so of them, evenly drawn.
      const tried = every.filter((_pair, index) => index % Math.ceil(every.length / 60) === 0);
      const mismatches = tried.filter((pair) => {
        const found = brute(yard, (scene) => ({ ...scene, faults: [...pair] }), moments);
        const { proof } = hurtYard(sound, pair);
        return found.unsafe !== proof.unsafe || found.unsafeHome !== proof.unsafeHome;
      });
      expect(mismatches).toEqual([]);
      expect(tried.length).toBeGreaterThan(40);
    },
    300_000
  );
});

describe('pairSteps(ground)', () => {
  const yard = yardOf({ deckRoads: 1, runningRoad: 'direct', switching: 'none', plug: false });
  const proofs = result(pairSteps(groundOf(yard)));

  test('counts the states of every two faults, bad joints too, as brute force does', () => {
    const moments = bruteMoments(yard);
    const all = faultsOf(yard);
    const every = all.flatMap((one, index) => all.slice(index + 1).map((other) => [one, other]));
    const tried = every.map((faults) => brute(yard, (scene) => ({ ...scene, faults }), moments));
    const sum = (of: 'states' | 'unsafe') => tried.reduce((total, each) => total + each[of], 0n);
    const { pairs, states, unsafe } = proofs;
    expect({ pairs, states, unsafe }).toEqual({
      pairs: BigInt(every.length),
      states: sum('states'),
      unsafe: sum('unsafe')
    });
    expect(every.length).toBeGreaterThan(30);
  });

  test('finds rails that touch and hide an interlock wired to the wrong contact', () => {
    const { opening, hiding } = result(
      pairSteps(groundOf(yardOf({ deckRoads: 1, stablingRoads: 1 })))
    );
    const pair = hiding.find(({ faults: [, other] }) => 'touching' in other);
    expect(pair).toMatchObject({
      faults: [{ comNc: 'pin contact 1' }, { touching: ['1', 'R'] }],
      breach: { road: '1', end: 'west', pin: 'home' },
      notice: { dead: [], live: [] }
    });
    expect(opening).toEqual([]);
  });

  test('is not begun in a yard with too many pairs, which is told why', () => {
    expect(tooManyPairs(yardOf({ deckRoads: 2, stablingRoads: 1 }))).toBeUndefined();
    expect(tooManyPairs(yardOf({ deckRoads: 24, stablingRoads: 12 }))).toMatch(
      /small yards only: up to 8\s000 pairs.* This yard has [\d\s]+ pairs/
    );
  });
});

describe('hurtYard(sound, faults)', () => {
  const yards: readonly YardInput[] = [
    { runningRoad: 'interlocked' },
    { return: 'ring', lamps: 'track' },
    { return: 'star', switching: 'rotary', runningRoad: 'interlocked' },
    { switching: 'pushes', second: { roads: ['B', '1'] } },
    { switching: 'rotary', rotary: 'make before break' },
    { return: 'ring', plug: false, endStops: ['Q'] },
    { second: { roads: ['B'], shares: 'supply' } },
    { runningRoad: 'interlocked', runningEnds: 'both', lamps: 'own' },
    { switching: 'none', runningRoad: 'interlocked', runningEnds: 'two west', interlocked: false },
    {
      runningRoad: 'interlocked',
      cuts: [
        { road: 'Q', atMm: 900 },
        { road: 1, rail: 'both', atMm: 150 }
      ]
    }
  ];
  const ends = ({ breaches }: GapProof) =>
    breaches.toSorted((a, b) => `${a.road} ${a.end}`.localeCompare(`${b.road} ${b.end}`));

  test.each(yards.map((input) => [JSON.stringify(input), input] as const))(
    'gives what a proof from nothing gives, states and breaches, for each single fault: %s',
    (_, input) => {
      const ground = groundOf(yardOf({ deckRoads: 2, stablingRoads: 2, ...input }));
      const sound = soundOf(ground);
      for (const faults of [[], ...faultsOf(ground.yard).map((fault) => [fault])]) {
        const plain = proveGap(ground, faults);
        const { proof } = hurtYard(sound, faults);
        const words = JSON.stringify(faults);
        expect([proof.unsafe, proof.unsafeHome], words).toEqual([plain.unsafe, plain.unsafeHome]);
        expect(ends(proof), words).toEqual(ends(plain));
      }
    },
    120_000
  );
});
