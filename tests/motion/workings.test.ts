import { describe, expect, test } from 'vitest';
import { works, workingsOf } from '../../src/lib/motion';
import type { YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

const yards: readonly YardInput[] = [
  { deckRoads: 2, stablingRoads: 1, runningRoad: 'interlocked', scale: 'N' },
  { deckRoads: 2, stablingRoads: 1, cuts: [{ road: 'A', atMm: 600 }] }
];

describe('workingsOf(yard)', () => {
  test('onto the deck and off it, at each running road and at the stabling roads', () => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 4, runningEnds: 'both' });
    expect(workingsOf(yard).map(({ from, to, hole, way }) => [from, to, hole, way])).toEqual([
      ['Q', 'A', 'A', 'east'],
      ['A', 'Q', 'A', 'west'],
      ['QQ', 'A', 'A at QQ', 'west'],
      ['A', 'QQ', 'A at QQ', 'east'],
      ['1', 'R', '1', 'west'],
      ['R', '1', '1', 'east']
    ]);
    expect(workingsOf(yardOf({ deckRoads: 5 }))).toEqual([]);
  });

  test.each(yards)('%j: every one of them works as it is told', (input) => {
    const yard = yardOf(input);
    const all = workingsOf(yard);
    expect(all).toHaveLength(4);
    expect(all.map((working) => works(yard, working))).toEqual([true, true, true, true]);
  });

  test('one selector cannot feed both roads of a move to stabling', () => {
    const yard = yardOf({ deckRoads: 2, stablingRoads: 1, switching: 'rotary' });
    const found = workingsOf(yard).map((working) => [working.to, works(yard, working)]);
    expect(found).toEqual([
      ['A', true],
      ['Q', true],
      ['R', false],
      ['1', false]
    ]);
  });
});
