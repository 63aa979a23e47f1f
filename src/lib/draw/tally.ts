import { scaleBand, scaleLinear } from 'd3';
import { surenesses, type Period, type Sureness } from '../share';

/** One column of a tally: those right below, the others on top; px. */
export interface TallyBar {
  readonly x: number;
  readonly width: number;
  /** Top of the whole column, and of its solid part. */
  readonly top: number;
  readonly solid: number;
}

/** So few calls do not fill the height. */
const MOST_EMPTY = 4;
/** Widest column, px. */
const WIDEST = 22;

/** Columns of one level of sureness; all levels share one scale, so that they can be compared. */
export function tallyBars(
  periods: readonly Period[],
  sure: Sureness,
  { width, height }: { readonly width: number; readonly height: number }
): readonly TallyBar[] {
  const most = periods.reduce(
    (so, { tallies }) => Math.max(so, ...surenesses.map((each) => tallies[each].of)),
    MOST_EMPTY
  );
  const x = scaleBand<number>()
    .domain(periods.map(({ firstDay }) => firstDay))
    .range([0, width])
    .paddingInner(0.3);
  const y = scaleLinear([0, most], [height, 2]);
  const wide = Math.min(x.bandwidth(), WIDEST);
  return periods
    .filter(({ tallies }) => tallies[sure].of > 0)
    .map(({ firstDay, tallies }) => ({
      x: x(firstDay) as number,
      width: wide,
      top: y(tallies[sure].of),
      solid: y(tallies[sure].right)
    }));
}
