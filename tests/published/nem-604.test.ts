import { describe, expect, test } from 'vitest';
import { checks, defaultOptions, roadVolts } from '../../src/lib/checks';
import { dropEachWay, dropShare, permissibleLength } from '../../src/lib/tables';
import { locoNamed, type YardInput } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { yardOf } from '../yard/build';

const disc = (d: number): number => (Math.PI / 4) * d ** 2;

/** NEM 604:2013: clauses 2.2 and 2.4, table 2. */
describe('permissibleLength(mm2, amps, drop)', () => {
  test.each([
    ['solid, 0.40 mm', disc(0.4), 3.5, 3.531],
    ['solid, 1.50 mm', disc(1.5), 49.6, 49.638],
    ['flexible, 0.14 mm²', 0.14, 3.9, 3.933],
    ['flexible, 1.50 mm²', 1.5, 42, 42.135]
  ])('%s at 1 A and 0.5 V', (_, mm2, printed, exact) => {
    near(permissibleLength(mm2, 1), printed, { abs: 0.15 });
    near(permissibleLength(mm2, 1), exact, { rel: 1e-3 });
  });

  test('the worked example: 0.5 mm at 1.2 A, with the area as it is and as it is rounded there', () => {
    near(permissibleLength(disc(0.5), 1.2), 4.596, { rel: 1e-3 });
    near(permissibleLength(0.2, 1.2), 4.7, { abs: 0.05 });
  });

  test('the drop recommended: a tenth of the source, 1.0 V out and back in practice', () => {
    expect(dropShare).toBe(0.1);
    expect(2 * dropEachWay).toBe(1);
  });
});

/** NEM 604:2013, clause 2.2: a tenth of the source's volts, out and home together. */
describe('the running check', () => {
  const grade = (input: YardInput) =>
    checks.find(({ id }) => id === 'running')?.run(yardOf(input), defaultOptions)[0]?.grade;
  const wired = (lengthM: number): YardInput => ({
    deckRoads: 1,
    plug: false,
    wires: { dropper: { size: '7/0.2', lengthM } }
  });

  test('lets the far road lose a tenth of 12 V, and no more', () => {
    const lost = (lengthM: number) =>
      roadVolts(yardOf(wired(lengthM)), 'A', locoNamed('Avocet')).lost;
    const perMetre = lost(11) - lost(10);
    const most = 10 + (dropShare * 12 - lost(10)) / perMetre;
    expect(grade(wired(most - 0.1))).toBe('fine');
    expect(grade(wired(most + 0.1))).toBe('think');
  });
});
