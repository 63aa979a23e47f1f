import { expect, test } from 'vitest';
import { extreme, fuzz } from './fuzz';
import type { Fuzz } from './fuzz';

const long = { timeout: 60_000 };

/** Refusals other than for a loop of 0 Ω or a bare diode on a bare source. */
const hopeless = (refused: Fuzz['refused']): number =>
  (refused.converge ?? 0) + (refused['way-back'] ?? 0);

test(
  'solve(circuit) gives a finite answer or says why not, for 4 000 random circuits',
  long,
  () => {
    const { solved, refused, bad } = fuzz(1, 4000);
    expect(bad).toEqual([]);
    expect(Object.keys(refused).sort()).toEqual(['diode', 'loop', 'way-back']);
    expect(solved).toBeGreaterThan(3500);
  }
);

test(
  'solve(circuit) finds an answer wherever nothing is forced: 4 000 without current sources',
  long,
  () => {
    let unfound = 0;
    for (let seed = 1; seed <= 6000; seed++) {
      if (seed % 3 !== 0) unfound += hopeless(fuzz(seed, 1).refused);
    }
    expect(unfound).toBe(0);
  }
);

test(
  'solve(circuit) gives finite answers for sizes that no circuit has: 2 000 circuits',
  long,
  () => {
    const { solved, bad } = fuzz(1, 2000, extreme);
    expect(bad).toEqual([]);
    expect(solved).toBeGreaterThan(1500);
  }
);
