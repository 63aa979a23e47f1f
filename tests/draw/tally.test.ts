import { describe, expect, test } from 'vitest';
import { tallyBars } from '../../src/lib/draw/tally';
import type { Period, Tally } from '../../src/lib/share';

const none: Tally = { right: 0, of: 0 };
const period = (firstDay: number, certain: Tally, fairly = none): Period => ({
  firstDay,
  lastDay: firstDay,
  tallies: { 'a guess': none, fairly, certain }
});
const size = { width: 300, height: 50 };

describe('tallyBars(periods, sure)', () => {
  const periods = [
    period(1, { right: 3, of: 4 }),
    period(2, none),
    period(3, { right: 8, of: 8 }, { right: 0, of: 2 })
  ];

  test('one column for each period with calls, in order, inside the picture', () => {
    const bars = tallyBars(periods, 'certain', size);
    expect(bars).toHaveLength(2);
    for (const { x, width, top } of bars) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x + width).toBeLessThanOrEqual(size.width);
      expect(top).toBeGreaterThanOrEqual(0);
    }
    expect(bars[0]?.x).toBeLessThan(bars[1]?.x as number);
  });

  test('heights go with counts, on one scale for every level', () => {
    const [first, second] = tallyBars(periods, 'certain', size);
    const [fairly] = tallyBars(periods, 'fairly', size);
    const high = (y = 0) => size.height - y;
    expect(high(second?.top)).toBeCloseTo(2 * high(first?.top));
    expect(high(first?.solid)).toBeCloseTo(0.75 * high(first?.top));
    expect(high(fairly?.top)).toBeCloseTo(0.5 * high(first?.top));
    expect(fairly?.solid).toBe(size.height);
  });
});
