import { expect } from 'vitest';

/** How far a number may be from the expected one: relative, absolute, whichever is wider. */
export interface Tolerance {
  readonly rel?: number;
  readonly abs?: number;
}

/** Expects `actual` within the wider of `rel`·|expected| and `abs` of `expected`. */
export function near(actual: number | undefined, expected: number, tolerance: Tolerance): void {
  const allowed = Math.max((tolerance.rel ?? 0) * Math.abs(expected), tolerance.abs ?? 0);
  const message = `${String(actual)} is not within ${String(allowed)} of ${String(expected)}`;
  expect(Math.abs((actual ?? NaN) - expected) <= allowed, message).toBe(true);
}
