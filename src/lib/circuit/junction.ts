/**
 * The bend of one branch: a junction with all the resistance in series with it.
 *
 * It stands at x, the junction's voltage in units of ideality × Vt; its current is then
 * saturation·(eˣ − 1) and its voltage scale·x + ohms·current. That is a point of the curve for any
 * x, so no guess can overflow. Points stand on a fine grid, so that where a solution ends does not
 * depend on where it began; half a step from the true point the tangent is off by 1e-16 V.
 */
export interface Junction {
  /** Saturation current, A. */
  readonly saturation: number;
  /** Ideality × thermal voltage, V. */
  readonly scale: number;
  /** Resistance of the whole branch, Ω. */
  readonly ohms: number;
}

/** Steps of the grid of points per unit of x. */
const grid = 2 ** 22;
/** How far the network may put x from its point for the point to stand: half a step, and a hair. */
export const stands = 0.5001 / grid;
/** Below this x a junction keeps its slope, so that its conductance never falls to 0. */
const flattest = -30;
/** No junction is thought to carry more than this on the way, A; so nothing overflows. */
export const mostAmps = 1e9;
/** Current at which a junction is first thought to stand, A. */
const firstAmps = 1e-3;

const steepest = (saturation: number): number => Math.log1p(mostAmps / saturation);

/** Is a point where no solution has put it, but the cap? */
export const isBeyond = (x: number, saturation: number): boolean =>
  x >= steepest(saturation) * (1 - 1e-6);

const onGrid = (x: number): number => Math.round(x * grid) / grid;

/** Where a junction is first thought to stand. */
export const firstPoint = (saturation: number): number =>
  onGrid(Math.log1p(firstAmps / saturation));

/** Current at x on the steep side of the curve, A: saturation·eˣ. */
export const steepAt = (x: number, saturation: number): number =>
  saturation * Math.exp(x < flattest ? flattest : x);

/** Current at x, A. */
export const ampsAt = (x: number, saturation: number): number => saturation * Math.expm1(x);

/**
 * The next point, from the voltage and current that the tangents agreed on.
 *
 * A conducting junction follows the current, by a logarithm; a blocking one the voltage. One that
 * starts to conduct goes to a milliampere at once rather than up a decade at a time.
 */
export function nextPoint(v: number, i: number, junction: Junction): number {
  const { saturation, scale, ohms } = junction;
  if (i <= 0) return onGrid(pointForVolts(v, junction));
  const byAmps = Math.log1p(Math.min(i, mostAmps) / saturation);
  const start = firstPoint(saturation);
  if (byAmps >= start || v <= scale * byAmps + ohms * i) return onGrid(byAmps);
  return onGrid(Math.max(byAmps, Math.min(pointForVolts(v, junction), start)));
}

/** The point at voltage v: Newton on scale·x + ohms·i(x) = v, from above, where it cannot overshoot. */
function pointForVolts(v: number, { saturation, scale, ohms }: Junction): number {
  const share = ohms * saturation;
  let x = v <= 0 ? 0 : Math.min(v / scale, share > 0 ? Math.log1p(v / share) : Infinity);
  x = Math.min(x, steepest(saturation));
  for (let step = 0; step < 60; step++) {
    const change = (scale * x + share * Math.expm1(x) - v) / (scale + share * Math.exp(x));
    // Capped from above, the point may lie below the voltage; then it stays at the cap.
    if (change <= 0) break;
    x -= change;
    if (change <= 1e-15 * (1 + Math.abs(x))) break;
  }
  return x;
}
