/**
 * Numbers of 300 decimal places, for a solver that rounding does not reach: fixed point on BigInt.
 *
 * The exponential by its power series, after halving the argument.
 */
export type Big = bigint;

const bits = 1024n;
const one = 1n << bits;

/** The exact value of a double. */
export function big(value: number): Big {
  if (!Number.isFinite(value)) throw new RangeError(`${String(value)} is not finite.`);
  let mantissa = value;
  let shift = 0n;
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    shift++;
  }
  return (BigInt(mantissa) << bits) >> shift;
}

export function toNumber(value: Big): number {
  const negative = value < 0n;
  const size = negative ? -value : value;
  const length = BigInt(size.toString(2).length);
  const drop = length > 64n ? length - 64n : 0n;
  const number = Number(size >> drop) * 2 ** Number(drop - bits);
  return negative ? -number : number;
}

export const times = (a: Big, b: Big): Big => (a * b) >> bits;
export const over = (a: Big, b: Big): Big => (a << bits) / b;
export const abs = (a: Big): Big => (a < 0n ? -a : a);

/** eᵃ: the series at a/2ⁿ, squared n times. */
export function exp(a: Big): Big {
  const halvings = BigInt(Math.max(0, abs(a).toString(2).length - Number(bits)) + 16);
  const small = a >> halvings;
  let term = one;
  let sum = one;
  for (let n = 1n; abs(term) > 1n; n++) {
    term = times(term, small) / n;
    sum += term;
  }
  for (let n = 0n; n < halvings; n++) sum = times(sum, sum);
  return sum;
}
