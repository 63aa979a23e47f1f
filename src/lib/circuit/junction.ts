import type { Model } from './kinds';

/**
 * Where a diode stands: x = vj / scale, the junction's voltage in units of ideality × Vt.
 *
 * Its current is saturation·(eˣ − 1) and its voltage scale·x + ohms·current: a point on the curve
 * for any x, so that no guess can overflow.
 */
export type Point = number;

type Junction = NonNullable<Model['junction']>;

/** Beyond this a junction's slope is kept, so that its conductance never falls to 0. */
const flattest = -30;
/** Current at which a junction is first thought to stand, A. */
const firstAmps = 1e-3;
/** eˣ is kept in range; no junction carries e⁶⁰⁰ times its saturation current. */
const steepest = 600;

export const firstPoint = ({ saturation }: Junction): Point =>
  Math.min(Math.log1p(firstAmps / saturation), steepest);

export const ampsAt = (x: Point, { saturation }: Junction): number => saturation * Math.expm1(x);

export const voltsAt = (x: Point, junction: Junction, ohms: number): number =>
  junction.scale * x + ohms * ampsAt(x, junction);

/** Slope di/dv of junction and series resistance together, S. */
export function slopeAt(x: Point, { saturation, scale }: Junction, ohms: number): number {
  const steep = saturation * Math.exp(Math.max(x, flattest));
  return steep / (ohms * steep + scale);
}

/** Current of the tangent at v = 0, A: i = slope·v + intercept. */
export function interceptAt(x: Point, junction: Junction, ohms: number): number {
  const { saturation, scale } = junction;
  const steep = saturation * Math.exp(Math.max(x, flattest));
  return (scale * (ampsAt(x, junction) - x * steep)) / (ohms * steep + scale);
}

/**
 * The next point, from the voltage and current that the tangents agreed on.
 *
 * A conducting junction follows the current, by a logarithm; a blocking one the voltage. One that
 * starts to conduct goes to a milliampere at once rather than up a decade at a time.
 */
export function nextPoint(x: Point, v: number, i: number, model: Model): Point {
  const junction = model.junction;
  if (junction === undefined) return x;
  const start = firstPoint(junction);
  if (i <= 0) return Math.min(pointForVolts(v, junction, model.ohms), steepest);
  const byAmps = Math.min(Math.log1p(i / junction.saturation), steepest);
  if (byAmps >= start || v <= voltsAt(byAmps, junction, model.ohms)) return byAmps;
  const byVolts = pointForVolts(v, junction, model.ohms);
  return Math.max(byAmps, Math.min(byVolts, start));
}

/** The point at voltage v: Newton on scale·x + ohms·i(x) = v, from above, where it cannot overshoot. */
export function pointForVolts(v: number, junction: Junction, ohms: number): Point {
  const { saturation, scale } = junction;
  const share = ohms * saturation;
  let x = v <= 0 ? 0 : Math.min(v / scale, share > 0 ? Math.log1p(v / share) : Infinity);
  x = Math.min(x, steepest);
  for (let step = 0; step < 100; step++) {
    const change = (scale * x + share * Math.expm1(x) - v) / (scale + share * Math.exp(x));
    x -= change;
    if (Math.abs(change) <= 1e-15 * (1 + Math.abs(x))) break;
  }
  return x;
}
