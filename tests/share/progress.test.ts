import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  countTries,
  noProgress,
  owesTwin,
  readProgress,
  undated,
  withTry,
  type Progress,
  type Try
} from '../../src/lib/share';
import { BorderError } from '../../src/lib/yard';
import { thrown } from '../yard/build';
import { anyTry } from './tries';

const id = '01-out-and-home/1';
const after = (...tries: readonly Try[]): Progress =>
  tries.reduce((progress, each) => withTry(progress, id, each), noProgress);

describe('readProgress(text)', () => {
  test('reads back what was written, whatever was tried', () => {
    const tries = fc.array(fc.tuple(fc.stringMatching(/^[0-9a-z/-]{1,20}$/), anyTry));
    fc.assert(
      fc.property(tries, (all) => {
        const progress = all.reduce((kept, [call, each]) => withTry(kept, call, each), noProgress);
        expect(readProgress(JSON.stringify(progress))).toEqual(progress);
      }),
      { numRuns: 100, seed: 2 }
    );
  });

  test.each([
    ['no text', '', 'progress: met text that is no JSON, allowed: saved progress.'],
    ['half a text', '{"version":1,"calls":{', 'progress: met text that is no JSON'],
    ['nothing', 'null', 'progress: met null, allowed: '],
    ['a list', '[]', 'progress › version: met nothing, allowed: a value: it must be given.'],
    ['no calls', '{"version":1}', 'progress › calls: met nothing'],
    ['another version', '{"version":3,"calls":{}}', 'progress › version: met 3, allowed: 1 or 2.'],
    [
      'half a day',
      '{"version":2,"calls":{"x":[{"right":true,"sure":"fairly","day":2.5}]}}',
      'progress › calls › x › 0 › day: met 2.5, allowed: a whole number of days.'
    ],
    ['calls that are a number', '{"version":1,"calls":3}', 'progress › calls: met 3'],
    [
      'an unknown sureness',
      '{"version":1,"calls":{"x":[{"right":true,"sure":"very"}]}}',
      'progress › calls › x › 0 › sure: met "very"'
    ],
    [
      'a key that is not ours',
      '{"version":1,"calls":{},"name":"someone"}',
      "progress › name: met the unknown key 'name'"
    ]
  ])('%s: refused with a message', (_, text, message) => {
    const error = thrown(() => readProgress(text));
    expect(error).toBeInstanceOf(BorderError);
    expect((error as BorderError).message).toContain(message);
  });

  test('any text at all is read, or refused as what does not fit', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const error = thrown(() => readProgress(text));
        expect(error === undefined || error instanceof BorderError).toBe(true);
      }),
      { numRuns: 300, seed: 4 }
    );
  });
});

describe('readProgress(text) of the first version', () => {
  const kept = readFileSync(join(import.meta.dirname, 'progress-1.json'), 'utf8');

  test('reads a record as it was kept: every try is there, without a day', () => {
    const progress = readProgress(kept);
    expect(progress.version).toBe(2);
    expect(progress.calls).toEqual((JSON.parse(kept) as { calls: unknown }).calls);
    expect(countTries(progress)).toBe(5);
    expect(undated(progress)).toBe(5);
    expect(owesTwin(progress, '03-a-switch-is-a-gap/5')).toBe(true);
  });

  test('goes on with days from there, and is read again', () => {
    const more = withTry(readProgress(kept), 'home/1', { right: true, sure: 'fairly', day: 20600 });
    expect(readProgress(JSON.stringify(more))).toEqual(more);
    expect(undated(more)).toBe(5);
  });
});

describe('withTry(progress)', () => {
  test('adds to the call’s tries and leaves what it was given', () => {
    const one = after({ right: false, sure: 'fairly' });
    const two = withTry(one, id, { right: true, sure: 'certain' });
    expect(one.calls[id]).toHaveLength(1);
    expect(two.calls[id]).toEqual([
      { right: false, sure: 'fairly' },
      { right: true, sure: 'certain' }
    ]);
    expect(noProgress.calls).toEqual({});
  });
});

describe('owesTwin(progress)', () => {
  test.each<[string, Try[], boolean]>([
    ['nothing called yet', [], false],
    ['wrong and certain', [{ right: false, sure: 'certain' }], true],
    ['wrong and fairly sure', [{ right: false, sure: 'fairly' }], false],
    ['wrong, a guess', [{ right: false, sure: 'a guess' }], false],
    ['right and certain', [{ right: true, sure: 'certain' }], false],
    [
      'wrong and certain, then right',
      [
        { right: false, sure: 'certain' },
        { right: true, sure: 'a guess' }
      ],
      false
    ],
    [
      'right, then wrong and certain',
      [
        { right: true, sure: 'fairly' },
        { right: false, sure: 'certain' }
      ],
      true
    ]
  ])('%s', (_, tries, owed) => {
    expect(owesTwin(after(...tries), id)).toBe(owed);
    expect(owesTwin(after(...tries), 'another call')).toBe(false);
  });
});
