import { describe, expect, test } from 'vitest';
import { groundOf, proveGap, type GapProof } from '../../src/lib/checks';
import { hurtYard } from '../../src/lib/checks/gap/hurt';
import { soundOf } from '../../src/lib/checks/gap/sound';
import { faultsOf, type Fault, type Yard, type YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';
import { brute, bruteMoments } from './brute';

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
      const ground = groundOf(yard);
      const moments = bruteMoments(yard);
      const every = pairsOf(yard);
      // Sixty or so of them, evenly drawn.
      const tried = every.filter((_pair, index) => index % Math.ceil(every.length / 60) === 0);
      const mismatches = tried.filter((pair) => {
        const found = brute(yard, (scene) => ({ ...scene, faults: [...pair] }), moments);
        const proof = proveGap(ground, pair);
        return found.unsafe !== proof.unsafe || found.unsafeHome !== proof.unsafeHome;
      });
      expect(mismatches).toEqual([]);
      expect(tried.length).toBeGreaterThan(40);
    },
    300_000
  );
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
