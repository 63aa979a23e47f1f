import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checks, defaultOptions } from '../../src/lib/checks';
import { fuseFor, strandedSizes, wireAmps } from '../../src/lib/tables';
import { YardSchema, admit, type YardInput } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { thrown, yardOf } from '../yard/build';

/** IEC 60364-4-43, the inequality from memory: IB ≤ In ≤ Iz. */
describe('fuseFor(load, wire limit)', () => {
  const amps = fc.double({ min: 0.01, max: 12, noNaN: true });

  test('lies between the load and what the wire may carry, or there is none', () => {
    fc.assert(
      fc.property(amps, amps, (load, limit) => {
        const fuse = fuseFor(load, limit);
        expect(fuse === undefined || (load <= fuse && fuse <= limit)).toBe(true);
        if (limit <= 10 && limit >= 1.3 * Math.max(load, 0.5)) expect(fuse).toBeDefined();
      })
    );
  });

  test.each(strandedSizes)('the protection check asks it for %s wire', (size) => {
    const limit = Math.min(10, wireAmps(size) + 0.5);
    const input = { deckRoads: 2, wires: { dropper: { size } }, supply: { limitAmps: limit } };
    const dropper = checks
      .find(({ id }) => id === 'protection')
      ?.run(yardOf(input), defaultOptions)
      .find(({ where }) => where.includes('dropper'));
    expect(dropper?.grade).toBe('must fix');
    const [, named] =
      /fuse of ([\d.]+) A in the feed near the controller/.exec(dropper?.cure ?? '') ?? [];
    expect(Number(named)).toBeLessThanOrEqual(wireAmps(size));
    expect(Number(named)).toBeGreaterThan(0);
  });
});

/** Preece 1888, from memory: copper melts at 80·d^1.5 A, ±30 %; 7.155, 13.145 and 28.284 A. */
describe('what melts a wire', () => {
  const preece = (mm: number) => 80 * mm ** 1.5;

  test.each([
    [0.2, 7.155],
    [0.3, 13.145],
    [0.5, 28.284]
  ])('%d mm: %d A', (mm, melts) => near(preece(mm), melts, { rel: 1e-3 }));

  test('lies far above what each stranded wire is let carry here', () => {
    for (const size of strandedSizes) {
      const strands = Number(size.split('/')[0]);
      expect(wireAmps(size), size).toBeLessThan((strands * preece(0.2) * 0.7) / 10);
    }
  });
});

/** EN/IEC 62115 (from memory) and IEC 61558-2-7 by its national edition: at most 24 V and 10 A. */
describe('supplies', () => {
  const refused = (supply: YardInput['supply']) =>
    thrown(() => admit('yard', YardSchema, { deckRoads: 1, supply })) !== undefined;

  test('of 24 V and 10 A are let in, and no more', () => {
    expect(refused({ volts: 24, limitAmps: 10 })).toBe(false);
    expect(refused({ volts: 24.1 })).toBe(true);
    expect(refused({ limitAmps: 10.1 })).toBe(true);
  });
});
