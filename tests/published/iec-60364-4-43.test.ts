import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checks, defaultOptions } from '../../src/lib/checks';
import { fuseFor, spoiltAfter, strandedSizes, wireAmps } from '../../src/lib/tables';
import { yardOf } from '../yard/build';

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
      .find(({ where }) => where.includes('droppers'));
    expect(dropper?.grade).toBe('must fix');
    const [, named] =
      /fuse of ([\d.]+) A in the feed near the controller/.exec(dropper?.cure ?? '') ?? [];
    expect(Number(named)).toBeLessThanOrEqual(wireAmps(size));
    expect(Number(named)).toBeGreaterThan(0);
    const [, trips] = /protector that trips by ([\d.]+) A/.exec(dropper?.cure ?? '') ?? [];
    expect(Number(trips)).toBeLessThanOrEqual(wireAmps(size) + 0.005);
  });
});

/** IEC 60364-4-43, k = 115 for copper in PVC: k²S² worked out by hand. */
describe('spoiltAfter(area, amps)', () => {
  test.each([
    [0.22, 640],
    [0.5, 3306],
    [0.75, 7439],
    [1, 13_225],
    [1.5, 29_756]
  ])('%s mm² takes %s A²s', (areaMm2, energy) => {
    for (const amps of [1, 4, 10]) {
      expect((spoiltAfter(areaMm2, amps) * amps ** 2) / energy - 1).toBeCloseTo(0, 3);
    }
  });

  test('the protection check tells it', () => {
    const input = { deckRoads: 2, wires: { dropper: { size: '7/0.2' } }, supply: { limitAmps: 5 } };
    const told = checks
      .find(({ id }) => id === 'protection')
      ?.run(yardOf(input), defaultOptions)
      .find(({ where }) => where.includes('droppers'));
    expect(told?.why).toMatch(/spoilt after 26 s at the soonest/);
  });
});
