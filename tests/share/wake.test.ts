import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { families } from '../../src/lib/predict';
import {
  A_VISIT,
  dueFrom,
  nextSeed,
  noProgress,
  toWake,
  wakeId,
  wentWrong,
  withTry,
  type Progress,
  type Try
} from '../../src/lib/share';
import { recordOf } from './tries';

const DAY = 20400;
const right = (day?: number): Try => ({ right: true, sure: 'fairly', ...(day && { day }) });
const wrong = (day?: number): Try => ({ ...right(day), right: false });
const ideas = [1, 2, 3, 4, 7, 9].map((lesson) => ({ id: `idea-${lesson}`, lesson }));
const lesson = (number: number, attempt: Try): readonly [string, Try] => [
  `0${number}-some-name/1`,
  attempt
];
const idsOf = (progress: Progress, day = DAY) => toWake(progress, ideas, day).map(({ id }) => id);

describe('toWake(progress, ideas, day)', () => {
  test('nothing before the first lesson; the first page is no lesson', () => {
    expect(idsOf(noProgress)).toEqual([]);
    expect(idsOf(recordOf([['home/1', right(DAY - 9)]]))).toEqual([]);
    expect(dueFrom(noProgress, ideas)).toBeUndefined();
  });

  test('the day after its lesson an idea is due, not before', () => {
    const progress = recordOf([lesson(1, right(DAY))]);
    expect(idsOf(progress, DAY)).toEqual([]);
    expect(dueFrom(progress, ideas)).toBe(DAY + 1);
    expect(idsOf(progress, DAY + 1)).toEqual(['idea-1']);
  });

  test('after that it comes back evenly, every four days, however often it was right', () => {
    let progress = recordOf([lesson(1, right(DAY))]);
    let day = DAY + 1;
    for (let seed = 0; seed < 5; seed++) {
      progress = withTry(progress, wakeId('idea-1', seed), right(day));
      expect(idsOf(progress, day + 3)).toEqual([]);
      expect(idsOf(progress, day + 4)).toEqual(['idea-1']);
      day += 4;
    }
  });

  test('one that went wrong comes back the next day, before all others', () => {
    const begun = recordOf(ideas.map((idea) => lesson(idea.lesson, right(DAY - 9))));
    const progress = withTry(begun, wakeId('idea-2', 0), wrong(DAY - 1));
    expect(idsOf(progress)[0]).toBe('idea-2');
    expect(idsOf(withTry(progress, wakeId('idea-2', 1), right(DAY - 1)))).not.toContain('idea-2');
  });

  test('a call gone wrong in its lesson counts as wrong until its idea is called rightly', () => {
    const progress = recordOf([
      ...ideas.map((idea) => lesson(idea.lesson, right(DAY - 9))),
      lesson(3, wrong(DAY - 9))
    ]);
    expect(idsOf(progress)[0]).toBe('idea-3');
  });

  test('three a visit: the newest lesson, one three or more back, the longest due', () => {
    const progress = recordOf(
      ideas.map(({ lesson: number }) => lesson(number, right(DAY - 20 + number)))
    );
    const [newest, ...others] = idsOf(progress);
    expect(newest).toBe('idea-9');
    expect(others).toEqual(['idea-1', 'idea-2']);
  });

  test('tries without a day are due at once', () => {
    expect(idsOf(recordOf([lesson(1, right())]))).toEqual(['idea-1']);
  });

  test('never more than three, never one twice, lessons mixed, whatever was called', () => {
    const call = fc.oneof(
      fc.constantFrom(...families).map((family) => `${family.lesson}-lesson/1`),
      fc.tuple(fc.constantFrom(...families), fc.nat(30)).map(([{ id }, seed]) => wakeId(id, seed))
    );
    const attempt = fc
      .tuple(fc.boolean(), fc.integer({ min: DAY - 30, max: DAY }))
      .map(([good, day]) => (good ? right(day) : wrong(day)));
    fc.assert(
      fc.property(fc.array(fc.tuple(call, attempt), { maxLength: 40 }), (tries) => {
        const progress = recordOf(tries);
        const all = toWake(progress, families, Infinity);
        const due = toWake(progress, families, DAY);
        for (const picked of [all, due]) {
          expect(picked.length).toBeLessThanOrEqual(A_VISIT);
          expect(new Set(picked.map(({ id }) => id)).size).toBe(picked.length);
        }
        const begun = new Set(
          families
            .map((family) => family.lesson)
            .filter((number) => tries.some(([id]) => id.startsWith(`${number}-`)))
        );
        expect(new Set(all.map((each) => each.lesson)).size).toBe(Math.min(begun.size, A_VISIT));
        const first = dueFrom(progress, families) ?? Infinity;
        expect(due.length > 0).toBe(first <= DAY);
      }),
      { numRuns: 200, seed: 3 }
    );
  });
});

describe('nextSeed(progress)', () => {
  test('is above every seed called so far, and 0 at first', () => {
    expect(nextSeed(noProgress)).toBe(0);
    const progress = recordOf([
      [wakeId('idea-1', 12), right(DAY)],
      [wakeId('idea-2', 9), right(DAY)],
      ['01-out/40', right(DAY)],
      ['wake/odd/name', right(DAY)]
    ]);
    expect(nextSeed(progress)).toBe(13);
  });
});

describe('wentWrong(progress, ideas, before)', () => {
  const before = (progress: Progress, number: number) =>
    wentWrong(progress, ideas, number).map(({ id }) => id);

  test('what went wrong last in the lessons before this one, the longest known first', () => {
    const progress = recordOf([
      lesson(1, wrong(DAY - 2)),
      lesson(2, right(DAY - 5)),
      lesson(4, wrong(DAY - 9)),
      lesson(9, wrong(DAY - 1))
    ]);
    expect(before(progress, 9)).toEqual(['idea-4', 'idea-1']);
    expect(before(progress, 10)).toEqual(['idea-4', 'idea-1', 'idea-9']);
  });

  test('what was put right since stays away; never more than three', () => {
    const all = recordOf(ideas.map((idea) => lesson(idea.lesson, wrong(DAY - 9))));
    expect(before(all, 10)).toHaveLength(A_VISIT);
    const mended = withTry(all, wakeId('idea-1', 0), right(DAY));
    expect(before(mended, 10)).not.toContain('idea-1');
    expect(before(noProgress, 10)).toEqual([]);
  });
});
