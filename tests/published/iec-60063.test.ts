import { describe, expect, test } from 'vitest';
import { nearest, nextAbove, series } from '../../src/lib/tables';

/** IEC 60063: lists as published. */
describe('series', () => {
  test('E12 and E24', () => {
    expect(series.E12.join(' ')).toBe('10 12 15 18 22 27 33 39 47 56 68 82');
    expect(series.E24.join(' ')).toBe(
      '10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91'
    );
  });

  test('E96', () => {
    const list =
      '100 102 105 107 110 113 115 118 121 124 127 130 133 137 140 143 147 150 154 158 162 165 169 ' +
      '174 178 182 187 191 196 200 205 210 215 221 226 232 237 243 249 255 261 267 274 280 287 294 ' +
      '301 309 316 324 332 340 348 357 365 374 383 392 402 412 422 432 442 453 464 475 487 499 511 ' +
      '523 536 549 562 576 590 604 619 634 649 665 681 698 715 732 750 768 787 806 825 845 866 887 ' +
      '909 931 953 976';
    expect(series.E96.join(' ')).toBe(list);
  });
});

describe('nearest and nextAbove', () => {
  /** The first two: documentation of a preferred-number library and of a design tool. */
  test.each([
    [319, 'E24', 330],
    [16834.2, 'E96', 16900],
    [90, 'E12', 82],
    [90, 'E24', 91],
    [90, 'E96', 90.9],
    [0.047, 'E12', 0.047],
    [9.9, 'E12', 10],
    [1e6, 'E24', 1e6]
  ] as const)('nearest(%d, %s)', (value, name, answer) => {
    expect(nearest(value, name)).toBe(answer);
  });

  test.each([
    [1120, 'E12', 1200],
    [432, 'E24', 470],
    [90, 'E24', 91],
    [83, 'E12', 100],
    [470, 'E12', 470],
    [0.1 + 0.2, 'E24', 0.3]
  ] as const)('nextAbove(%d, %s)', (value, name, answer) => {
    expect(nextAbove(value, name)).toBe(answer);
  });

  test('refuses what has no preferred value', () => {
    for (const value of [0, -1, NaN, Infinity]) {
      expect(() => nearest(value, 'E12')).toThrow(RangeError);
      expect(() => nextAbove(value, 'E96')).toThrow('It must be above 0 and finite.');
    }
  });
});
