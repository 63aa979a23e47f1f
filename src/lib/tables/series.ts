/** A series of preferred values. */
export type Series = 'E12' | 'E24' | 'E96';

/**
 * One decade of each series of preferred values.
 *
 * Source: IEC 60063. E96 follows 100·10^(i/96) rounded, without exception; E12 and E24 do not.
 */
export const series: Readonly<Record<Series, readonly number[]>> = {
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
  E24: [
    10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91
  ],
  E96: Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96)))
};

/** Values within this share of a preferred one are that one: what 1 Ω in 10 MΩ leaves over. */
const same = 1e-9;

/**
 * The value of a series nearest to one wanted, by difference.
 *
 * `value` above 0, else a `RangeError`; the lower of two equally near.
 *
 * @example
 * nearest(319, 'E24') // 330
 */
export function nearest(value: number, name: Series): number {
  const [below, above] = around(value, name);
  return value - below <= above - value ? below : above;
}

/**
 * The first value of a series that is not below one wanted.
 *
 * `value` above 0, else a `RangeError`.
 *
 * @example
 * nextAbove(1120, 'E12') // 1200
 */
export function nextAbove(value: number, name: Series): number {
  const [below, above] = around(value, name);
  return value <= below * (1 + same) ? below : above;
}

/** The values of a series on both sides of one, which may be the lower. */
function around(value: number, name: Series): [below: number, above: number] {
  if (!(value > 0) || value === Infinity) {
    throw new RangeError(`Preferred value: ${String(value)}. It must be above 0 and finite.`);
  }
  const list = series[name];
  const digits = list[0] ?? 10;
  const power = Math.floor(Math.log10(value / digits) + same);
  const all = [...list, digits * 10].map((one) => scaled(one, power));
  const at = all.findLastIndex((one) => one <= value * (1 + same));
  return [all[Math.max(at, 0)] ?? value, all[Math.max(at, 0) + 1] ?? value];
}

/** A whole number times a power of ten, rounded as if written down. */
const scaled = (digits: number, power: number): number =>
  Number(`${String(digits)}e${String(power)}`);
