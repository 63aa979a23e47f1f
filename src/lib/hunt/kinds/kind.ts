import { meterError } from '../../tables';
import type { Yard } from '../../yard';
import type { Moment } from '../moment';
import type { Range } from '../range';
import type { Settled } from '../settle';

/** What a test can show. */
export interface Outcome {
  readonly id: string;
  /** "bright", "0 V, or nearly". */
  readonly words: string;
}

/** What a meter shows in a test, as a number. */
export interface Figure {
  readonly unit: 'V' | 'Ω';
  /** Sizes at which one outcome ends and the next begins. */
  readonly edges: readonly number[];
  /** No reading can be more. */
  readonly most: number;
  /** The reading, without the meter's error; Infinity is open. */
  readonly of: (settled: Settled) => number;
  /** Id of the outcome that a reading is. */
  readonly outcome: (reading: number) => string;
}

/** One test that can be made of a yard. */
export interface Test {
  readonly id: string;
  readonly kind: string;
  readonly moment: Moment;
  /** What to do, with the names of the points. */
  readonly words: string;
  /** Where it is made, in a round of its kind: "on road C". */
  readonly place: string;
  /** Effort against that of a look, with the scene made. Source: common practice. */
  readonly cost: number;
  readonly outcomes: readonly Outcome[];
  /** How likely each outcome is where the yard is so, with a real meter's error. */
  readonly shares: (settled: Settled) => readonly number[];
  /** Whether that depends on the roads that are live though they should be dead. */
  readonly byLive?: true;
  /** What a meter shows, where one is held. */
  readonly figure?: Figure;
}

/** One kind of test: which tests of it a moment allows. */
export interface TestKind {
  readonly key: string;
  readonly make: (yard: Yard, moment: Moment) => readonly Test[];
}

/** Number of the band that a size lies in; band i ends below edges[i], the last has no end. */
export const bandIn = (edges: readonly number[], size: number): number => {
  const band = edges.findIndex((edge) => size < edge);
  return band < 0 ? edges.length : band;
};

/**
 * How likely a size is to be read in each band.
 * The reading lies anywhere within the meter's error. The size itself is worked out only where its
 * bounds leave the band open.
 */
export function bandShares(range: Range, edges: readonly number[]): readonly number[] {
  const ends = [...edges, Infinity];
  const bandOf = (value: number) => bandIn(edges, value);
  const [least, most] = [
    bandOf(range.low * (1 - meterError)),
    bandOf(range.high * (1 + meterError))
  ];
  if (least === most) return surely(least, ends.length);
  const size = range.exact();
  const [low, high] = [size * (1 - meterError), size * (1 + meterError)];
  const [first, last] = [bandOf(low), bandOf(high)];
  if (first === last) return surely(first, ends.length);
  return ends.map((end, band) => {
    const from = Math.max(low, edges[band - 1] ?? 0);
    return Math.max(0, Math.min(high, end) - from) / (high - low);
  });
}

/** Certain to be the outcome `index` of `count`. */
export const surely = (index: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, each) => (each === index ? 1 : 0));
