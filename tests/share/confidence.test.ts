import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  countTries,
  noProgress,
  overTime,
  sureAndRight,
  surenesses,
  undated
} from '../../src/lib/share';
import { anyRecord, recordOf } from './tries';

describe('sureAndRight(progress)', () => {
  test('counts each level by itself, over all calls', () => {
    const progress = recordOf([
      ['a/1', { right: true, sure: 'certain' }],
      ['a/1', { right: false, sure: 'certain', day: 20001 }],
      ['b/1', { right: true, sure: 'a guess', day: 20001 }]
    ]);
    expect(sureAndRight(progress)).toEqual({
      'a guess': { right: 1, of: 1 },
      fairly: { right: 0, of: 0 },
      certain: { right: 1, of: 2 }
    });
    expect(undated(progress)).toBe(1);
  });
});

describe('overTime(progress)', () => {
  test('nothing called: no periods', () => {
    expect(overTime(noProgress, 12)).toEqual([]);
  });

  test('few days stand each by itself, with the days between', () => {
    const progress = recordOf([
      ['a/1', { right: true, sure: 'certain', day: 20003 }],
      ['a/1', { right: false, sure: 'fairly', day: 20000 }]
    ]);
    const periods = overTime(progress, 12);
    expect(periods.map(({ firstDay, lastDay }) => [firstDay, lastDay])).toEqual([
      [20000, 20000],
      [20001, 20001],
      [20002, 20002],
      [20003, 20003]
    ]);
    expect(periods[0]?.tallies.fairly).toEqual({ right: 0, of: 1 });
    expect(periods[3]?.tallies.certain).toEqual({ right: 1, of: 1 });
  });

  test('parts are equal, at most so many, one after another, and hold every dated try once', () => {
    fc.assert(
      fc.property(anyRecord, fc.integer({ min: 1, max: 14 }), (progress, most) => {
        const periods = overTime(progress, most);
        expect(periods.length).toBeLessThanOrEqual(most);
        for (const [index, { firstDay, lastDay }] of periods.entries()) {
          const next = periods[index + 1];
          if (next) expect(next.firstDay).toBe(lastDay + 1);
          expect(lastDay - firstDay).toBe(
            (periods[0]?.lastDay as number) - (periods[0]?.firstDay as number)
          );
        }
        const held = periods.flatMap(({ tallies }) => surenesses.map((sure) => tallies[sure].of));
        const sum = held.reduce((a, b) => a + b, 0);
        expect(sum).toBe(countTries(progress) - undated(progress));
      }),
      { numRuns: 150, seed: 9 }
    );
  });
});
