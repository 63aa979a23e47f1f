import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  changed,
  historyOf,
  MAX_STEPS,
  redone,
  settled,
  undone,
  type History
} from '../../src/lib/share';

const back = <T>(history: History<T>, times: number): History<T> =>
  Array.from({ length: times }).reduce<History<T>>((now) => undone(now), history);
const forth = <T>(history: History<T>, times: number): History<T> =>
  Array.from({ length: times }).reduce<History<T>>((now) => redone(now), history);
const typed = (text: string, key = 'name'): History<string> =>
  [...text].reduce((now, _, at) => changed(now, text.slice(0, at + 1), { key }), historyOf(''));

describe('changed(history, now)', () => {
  test('edits of one field are one step; of another, the next', () => {
    const name = typed('Shed');
    expect(name.past).toEqual(['']);
    const more = changed(name, 'Shed!', { key: 'other' });
    expect(undone(more).now).toBe('Shed');
    expect(undone(undone(more)).now).toBe('');
  });

  test('without a key, or once settled, each edit is a step of its own', () => {
    expect(changed(changed(historyOf(0), 1), 2).past).toEqual([0, 1]);
    expect(changed(settled(typed('Shed')), 'Sheds', { key: 'name' }).past).toEqual(['', 'Shed']);
  });

  test('after a step back the same field begins a new step', () => {
    const again = changed(undone(typed('Shed')), 'S', { key: 'name' });
    expect(again).toMatchObject({ past: [''], now: 'S', future: [] });
  });

  test('what is no change is no step, and keeps what can be redone', () => {
    const history = undone(changed(historyOf({ roads: 1 }), { roads: 2 }));
    expect(changed(history, { roads: 1 })).toBe(history);
    expect(changed(typed('S'), '', { key: 'name' }).past).toEqual([]);
  });

  test(`remembers ${MAX_STEPS} steps, the newest`, () => {
    const long = Array.from({ length: MAX_STEPS + 100 }).reduce<History<number>>(
      (now, _, index) => changed(now, index + 1),
      historyOf(0)
    );
    expect(long.past).toHaveLength(MAX_STEPS);
    expect(back(long, MAX_STEPS + 50).now).toBe(100);
    expect(forth(back(long, MAX_STEPS), MAX_STEPS).now).toBe(MAX_STEPS + 100);
  });
});

describe('undone and redone', () => {
  const anyEdit = fc.record({
    value: fc.integer({ min: 0, max: 5 }),
    key: fc.option(fc.constantFrom('a', 'b'), { nil: undefined })
  });
  const anyHistory = fc
    .array(anyEdit, { maxLength: 40 })
    .map((edits) =>
      edits.reduce(
        (now, { value, key }) =>
          changed(now, value, { most: 8, ...(key !== undefined && { key }) }),
        historyOf(-1)
      )
    );

  test('any history: back and forth by any number of steps comes to the same', () => {
    fc.assert(
      fc.property(anyHistory, fc.nat(12), (history, steps) => {
        expect(history.past.length).toBeLessThanOrEqual(8);
        const times = Math.min(steps, history.past.length);
        const { past, now, future } = forth(back(history, times), times);
        expect({ past, now, future }).toEqual({
          past: history.past,
          now: history.now,
          future: history.future
        });
        expect(back(history, times).now).toBe([...history.past, history.now].at(-1 - times));
      }),
      { numRuns: 500, seed: 1 }
    );
  });

  test('any history: neither goes past its end, and a change after a step back forgets what came after', () => {
    fc.assert(
      fc.property(anyHistory, fc.nat(12), (history, steps) => {
        const first = back(history, 99);
        expect(undone(first)).toBe(first);
        const last = forth(first, 99);
        expect(redone(last)).toBe(last);
        expect(last.now).toBe(history.now);
        const branched = changed(back(history, steps), 77);
        expect(branched.future).toEqual([]);
        expect(undone(branched).now).toBe(back(history, steps).now);
      }),
      { numRuns: 300, seed: 2 }
    );
  });

  test('no value in a history is ever changed', () => {
    const value = Object.freeze({ roads: Object.freeze([1]) });
    const history = changed(historyOf(value), { roads: [2] });
    expect(undone(history).now).toBe(value);
  });
});
