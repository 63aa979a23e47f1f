import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changesSince, printedWires, typedValue, verdictOf, wiresOf } from '../../src/lib/book';
import type { YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

const wires = (input: YardInput) => printedWires(yardOf(input));

const told = (before: YardInput, now: YardInput) => {
  const { changes, renumbered } = changesSince(wires(before), wires(now));
  return { changes: changes.map(({ kind, from, to, what }) => [kind, from, to, what]), renumbered };
};

describe('changesSince(printed, wires)', () => {
  test('nothing for the same yard', () => {
    expect(told({ deckRoads: 5, stablingRoads: 4 }, { deckRoads: 5, stablingRoads: 4 })).toEqual({
      changes: [],
      renumbered: []
    });
  });

  test('a road more: its wires are new, all others keep their ends and some move their numbers', () => {
    const { changes, renumbered } = told({ deckRoads: 2 }, { deckRoads: 3 });
    expect(changes).toEqual([
      ['added', 'toggle B, panel side', 'toggle C, panel side', ''],
      ['added', 'return tag C', 'return tag B', ''],
      ['added', 'toggle C, rail side', 'feed rail C', ''],
      ['added', 'return rail C', 'return tag C', '']
    ]);
    expect(renumbered).toEqual([
      { first: 3, last: 3, by: 1 },
      { first: 4, last: 8, by: 2 }
    ]);
  });

  test('a wire of another size, length or colour is altered, and says from what', () => {
    const { changes } = told(
      { deckRoads: 1 },
      { deckRoads: 1, wires: { main: { size: '32/0.2', lengthM: 3 } }, colours: { return: 'GY' } }
    );
    expect(changes).toEqual([
      ['altered', 'feed', 'toggle A, panel side', 'size 32/0.2, was 24/0.2; length 3 m, was 2 m'],
      [
        'altered',
        'return tag A',
        'return',
        'size 32/0.2, was 24/0.2; colour GY grey, was none; length 3 m, was 2 m'
      ],
      ['altered', 'return rail A', 'return tag A', 'colour GY grey, was none']
    ]);
  });

  test('of any two yards: what is kept, less what is gone, with what is new, is the new schedule', () => {
    const any = fc
      .record({
        deckRoads: fc.integer({ min: 1, max: 9 }),
        stablingRoads: fc.integer({ min: 0, max: 3 }),
        return: fc.constantFrom('chain' as const, 'ring' as const, 'star' as const),
        lamps: fc.constantFrom('none' as const, 'own' as const)
      })
      .filter(({ deckRoads, stablingRoads }) => stablingRoads <= deckRoads);
    fc.assert(
      fc.property(any, any, (before, now) => {
        const { changes, renumbered } = changesSince(wires(before), wires(now));
        const count = (kind: string) => changes.filter((each) => each.kind === kind).length;
        const [old, next] = [wiresOf(yardOf(before)), wiresOf(yardOf(now))];
        expect(old.length - count('removed') + count('added')).toBe(next.length);
        for (const { first, last, by } of renumbered) {
          for (let number = first; number <= last; number++) {
            const ends = ({ from, to }: { from: string; to: string }) => [from, to].sort();
            expect(ends(next[number + by - 1] as (typeof next)[0])).toEqual(
              ends(old[number - 1] as (typeof old)[0])
            );
          }
        }
      }),
      { numRuns: 40, seed: 3 }
    );
  });
});

describe('typedValue(text)', () => {
  test.each([
    ['11.6', 11.6],
    [' 11,6 V', 11.6],
    ['−11.6', -11.6],
    ['+0.5v', 0.5],
    ['.13 Ω', 0.13],
    ['1.2k', 1200],
    ['560 mV', 0.56],
    ['2 MΩ', 2e6],
    ['0.2 ohms', 0.2],
    ['open', Infinity],
    ['OL', Infinity],
    ['0.L', Infinity],
    ['∞', Infinity]
  ])('%j is %d', (text, value) => {
    expect(typedValue(text)).toBeCloseTo(value, 12);
  });

  test.each(['', 'abc', '1.2.3', '12 A', '1e5', '--3', 'V', '12 V 3', '1,2,3'])(
    '%j is no reading',
    (text) => {
      expect(typedValue(text)).toBeUndefined();
    }
  );
});

describe('verdictOf(line, text)', () => {
  test.each([
    [11.6, 'V', '', 'none', ''],
    [11.6, 'V', '11.5', 'ok', 'ok'],
    [11.6, 'V', '10.8', 'off', 'off by 0.80 V'],
    [11.6, 'V', '-11.6', 'off', 'off: the wrong way round'],
    [11.6, 'V', 'open', 'unread', 'no reading: type volts such as 11.6'],
    [0, 'V', '0.04', 'ok', 'ok'],
    [0.13, 'Ω', '200', 'off', 'off by 200 Ω'],
    [0.13, 'Ω', 'open', 'off', 'off: 0.13 Ω expected'],
    [Infinity, 'Ω', 'OL', 'ok', 'ok'],
    [Infinity, 'Ω', '0.2', 'off', 'off: open expected'],
    [0.13, 'Ω', '0.1o', 'unread', 'no reading: type ohms such as 0.13, or open']
  ] as const)('%d %s, typed %j', (expected, unit, text, ...[state, words]) => {
    expect(verdictOf({ expected, unit }, text)).toEqual({ state, words });
  });
});
