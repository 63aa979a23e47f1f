import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countTries, merged, noProgress, type Progress } from '../../src/lib/share';
import { anyRecord, recordOf } from './tries';

/** How often each try stands in a record, whatever the order. */
function counts({ calls }: Progress): Readonly<Record<string, number>> {
  const all = Object.entries(calls).flatMap(([id, tries]) =>
    tries.map(({ right, sure, day }) => JSON.stringify([id, right, sure, day]))
  );
  return Object.fromEntries(
    [...new Set(all)].map((key) => [key, all.filter((each) => each === key).length])
  );
}

const settings = { numRuns: 150, seed: 5 };

describe('merged(a, b)', () => {
  test('has every try of both as often as the one that has it more often', () => {
    fc.assert(
      fc.property(anyRecord, anyRecord, (a, b) => {
        const [mine, theirs, both] = [counts(a), counts(b), counts(merged(a, b))];
        for (const key of new Set([...Object.keys(mine), ...Object.keys(theirs)])) {
          expect(both[key]).toBe(Math.max(mine[key] ?? 0, theirs[key] ?? 0));
        }
        expect(counts(merged(b, a))).toEqual(both);
      }),
      settings
    );
  });

  test('a second time it adds nothing, nor does a record to itself, nor nothing', () => {
    fc.assert(
      fc.property(anyRecord, anyRecord, (a, b) => {
        const once = merged(a, b);
        expect(merged(once, b)).toEqual(once);
        expect(counts(merged(a, a))).toEqual(counts(a));
        expect(counts(merged(noProgress, a))).toEqual(counts(a));
      }),
      settings
    );
  });

  test('the later day comes last, so the last try is the latest', () => {
    const early = recordOf([['home/1', { right: false, sure: 'certain', day: 20000 }]]);
    const late = recordOf([['home/1', { right: true, sure: 'fairly', day: 20001 }]]);
    for (const both of [merged(early, late), merged(late, early)]) {
      expect(both.calls['home/1']?.map(({ day }) => day)).toEqual([20000, 20001]);
      expect(countTries(both)).toBe(2);
    }
  });
});
