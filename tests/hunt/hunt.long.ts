import { expect, test } from 'vitest';
import { everyFault, misread, nameOf, whole } from './every';

const MINUTES = 60_000;

test.each(whole.map((size) => [nameOf(size), size] as const))(
  '%s: every single fault is named by following the advice, in fewer tests than halving, within twice the bound and two',
  (_, size) => {
    const found = everyFault(size);
    console.table([found]);
    expect(found.named).toBe(found.suspects);
    expect(found.tests).toBeLessThan(found.halving);
    expect(found.worst).toBeLessThanOrEqual(2 * found.log2 + 2);
  },
  30 * MINUTES
);

test.each(whole.slice(0, 2).map((size) => [nameOf(size), size] as const))(
  '%s: one reading in ten wrong, a meter’s error of 2 %: the truth is among the first three in 95 of 100 hunts',
  (_, size) => {
    const found = misread(size, 1000);
    console.table([found]);
    expect(found['among the first three']).toBeGreaterThanOrEqual(950);
  },
  30 * MINUTES
);
