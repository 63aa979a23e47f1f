import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { locoNames, read, roads, type Yard } from '../../src/lib/yard';
import { sceneOf, yardOf } from './build';

const length = fc.record({
  size: fc.constantFrom('1/0.1', '7/0.2', '32/0.2', 'AWG 40', 'AWG 0000', '2.5 mm²'),
  lengthM: fc.constantFrom(0.01, 1, 50)
});

/** Yards at the edges of what their schema admits. */
const extreme: fc.Arbitrary<Yard> = fc
  .record({
    deckRoads: fc.constantFrom(1, 2, 12, 40),
    stablingRoads: fc.constantFrom(0, 1, 20),
    runningRoad: fc.constantFrom('none' as const, 'direct' as const, 'interlocked' as const),
    plug: fc.constantFrom(false as const, { returnContacts: 1 }, { returnContacts: 8 }),
    switching: fc.constantFrom('toggles' as const, 'none' as const),
    return: fc.constantFrom('chain' as const, 'ring' as const, 'star' as const),
    roadLengthMm: fc.constantFrom(300, 3000),
    supply: fc.record({
      volts: fc.constantFrom(1, 24),
      ohms: fc.constantFrom(0, 100),
      limitAmps: fc.constantFrom(0.05, 10)
    }),
    wires: fc.record({ main: length, link: length, dropper: length })
  })
  .map((input) =>
    yardOf({ ...input, stablingRoads: Math.min(input.stablingRoads, input.deckRoads) })
  );

describe('read(scene), at the edges of what a yard may be', { timeout: 60_000 }, () => {
  test('has a number for every part: no NaN leaves it', () => {
    fc.assert(
      fc.property(extreme, fc.constantFrom(-1, 0, 1), (yard, controller) => {
        const pairs = locoNames.map((name, index) => [name, roads(yard)[index]]);
        const locos = Object.fromEntries(pairs.filter(([, road]) => road !== undefined));
        const reading = read(yard, sceneOf(yard, { controller, locos }));
        const numbers = reading.circuit.elements.map(({ id, a, b }) => ({
          id,
          amps: reading.amps(id),
          volts: reading.between(a, b) ?? 0,
          share: reading.level(a).share ?? 0
        }));
        expect(numbers.length).toBeGreaterThan(4);
        expect(
          numbers.filter(({ amps, volts, share }) => !Number.isFinite(amps + volts + share))
        ).toEqual([]);
        expect(Math.abs(reading.amps('controller'))).toBeLessThanOrEqual(
          yard.supply.limitAmps * (1 + 1e-9)
        );
      }),
      { numRuns: 100, seed: 3 }
    );
  });
});
