import { describe, expect, test } from 'vitest';
import { groundOf, proveGap } from '../../src/lib/checks';
import { proveHurt, soundOf } from '../../src/lib/checks/gap/sound';
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

describe('proveHurt(sound, faults)', () => {
  const yards: readonly YardInput[] = [
    { runningRoad: 'interlocked' },
    { return: 'ring', lamps: 'track' },
    { return: 'star', switching: 'rotary', runningRoad: 'interlocked' },
    { switching: 'pushes', second: { roads: ['B', '1'] } },
    { switching: 'rotary', rotary: 'make before break' },
    { return: 'ring', plug: false, endStops: ['Q'] },
    { second: { roads: ['B'], shares: 'supply' } }
  ];
  const ends = ({ breaches }: ReturnType<typeof proveGap>) =>
    breaches.map(({ road, end, pin }) => `${road} ${end} ${pin}`).sort();

  test.each(yards.map((input) => [JSON.stringify(input), input] as const))(
    'gives what a proof from nothing gives, for each single fault: %s',
    (_, input) => {
      const ground = groundOf(yardOf({ deckRoads: 3, stablingRoads: 2, ...input }));
      const sound = soundOf(ground);
      const differ = [[], ...faultsOf(ground.yard).map((fault) => [fault])].filter((faults) => {
        const plain = proveGap(ground, faults);
        const quick = proveHurt(sound, faults);
        return (
          plain.unsafe !== quick.unsafe ||
          plain.unsafeHome !== quick.unsafeHome ||
          ends(plain).join() !== ends(quick).join()
        );
      });
      expect(differ).toEqual([]);
    },
    120_000
  );
});
