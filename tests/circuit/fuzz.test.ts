import { expect, test } from 'vitest';
import { fuzz } from './fuzz';

test('solve(circuit) gives a finite answer or says why not, for 5 000 random circuits', () => {
  const { solved, refused, bad } = fuzz(1, 5000);
  expect(bad).toEqual([]);
  expect(Object.keys(refused).sort()).toEqual(['converge', 'loop', 'overflow', 'way-back']);
  expect(solved).toBeGreaterThan(4000);
});

test('solve(circuit) finds an answer wherever nothing is forced: 5 000 without current sources', () => {
  let refused = 0;
  for (let seed = 1; seed <= 7500; seed++) {
    if (seed % 3 === 0) continue;
    refused += fuzz(seed, 1).refused.converge ?? 0;
  }
  expect(refused).toBe(0);
});
