/** A seeded source of numbers in [0, 1): the same seed gives the same circuits everywhere. */
export type Draw = () => number;

/**
 * Marsaglia's xorshift on 32 bits.
 *
 * Source: G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8 (2003).
 */
export function drawFrom(seed: number): Draw {
  let state = (seed * 2654435761 + 1) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
}

/** A whole number from `least` to `most`. */
export const whole = (draw: Draw, least: number, most: number): number =>
  least + Math.floor(draw() * (most - least + 1));

/** A number from 10^least to 10^most, evenly by decade. */
export const decades = (draw: Draw, least: number, most: number): number =>
  10 ** (least + draw() * (most - least));

export const pick = <T>(draw: Draw, list: readonly T[]): T => {
  const item = list[Math.floor(draw() * list.length)];
  if (item === undefined) throw new RangeError('Nothing to pick from.');
  return item;
};
