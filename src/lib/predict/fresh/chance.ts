/** Choices that follow from a seed alone: the same seed gives the same choices. */
export interface Chance {
  /** A whole number from 0 to `count` − 1. */
  readonly upTo: (count: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  /** True in `percent` of a hundred. */
  readonly odds: (percent: number) => boolean;
  /** So many different ones of a list, in the list's order. */
  readonly some: <T>(list: readonly T[], count: number) => readonly T[];
}

/**
 * A stream of 32-bit numbers: a counter that goes on by an odd step, each value mixed by two
 * multiplications. Source: common practice for small seeded generators.
 */
function streamOf(seed: number): () => number {
  let state = Math.imul(seed + 1, 0x9e3779b1) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
}

/** The choices of a seed, a whole number from 0. */
export function chanceOf(seed: number): Chance {
  const next = streamOf(seed);
  const upTo = (count: number) => next() % count;
  return {
    upTo,
    pick: (list) => list[upTo(list.length)] as (typeof list)[number],
    odds: (percent) => upTo(100) < percent,
    some: (list, count) => {
      const left = list.map((_, index) => index);
      while (left.length > count) left.splice(upTo(left.length), 1);
      return left.map((index) => list[index] as (typeof list)[number]);
    }
  };
}
