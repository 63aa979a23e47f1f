import { metals } from './metal';
import type { Metal } from './metal';
import { inch } from './physics';

/** Area of a flat-bottom rail as a share of its height squared, ±20 %. Source: from memory of NMRA RP-15.1 sections. */
export const railAreaFactor = 0.35;

/**
 * Height of a rail of that code, m: the code is the height in thousandths of an inch.
 *
 * Source: NMRA practice, by definition.
 *
 * @example
 * railHeight(100) // 0.00254
 */
export const railHeight = (code: number): number => (code / 1000) * inch;

/**
 * Resistance of one rail a metre long, Ω/m: ρ / (0.35·h²), an estimate good to ±25 %.
 *
 * `code` the height in 1/1000 in; `metal` nickel silver unless given.
 *
 * Source: geometry; area factor from memory.
 *
 * @example
 * railOhmsPerMetre(100) // 0.128
 */
export function railOhmsPerMetre(code: number, metal: Metal = 'nickel silver'): number {
  if (!(code > 0)) throw new RangeError(`Rail code: ${String(code)}. It must be above 0.`);
  return metals[metal].resistivity / (railAreaFactor * railHeight(code) ** 2);
}
