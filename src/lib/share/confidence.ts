import { surenesses, type Progress, type Sureness, type Try } from './progress';

/** How many of so many were right. */
export interface Tally {
  readonly right: number;
  readonly of: number;
}

/** A tally for each level of sureness. */
export type Tallies = Readonly<Record<Sureness, Tally>>;

/** What was called in some days running. */
export interface Period {
  readonly firstDay: number;
  readonly lastDay: number;
  readonly tallies: Tallies;
}

const triesOf = ({ calls }: Progress): readonly Try[] => Object.values(calls).flat();

function tally(tries: readonly Try[]): Tallies {
  const entries = surenesses.map((sure) => {
    const made = tries.filter((each) => each.sure === sure);
    return [sure, { right: made.filter(({ right }) => right).length, of: made.length }] as const;
  });
  return Object.fromEntries(entries) as unknown as Tallies;
}

/** How often calls were right, for each level of sureness. */
export const sureAndRight = (progress: Progress): Tallies => tally(triesOf(progress));

/** How many tries have no day: those of the first version. */
export const undated = (progress: Progress): number =>
  triesOf(progress).filter(({ day }) => day === undefined).length;

/** The days from the first try to the last in at most `most` equal parts, the oldest first. */
export function overTime(progress: Progress, most: number): readonly Period[] {
  const tries = triesOf(progress).filter(({ day }) => day !== undefined);
  if (tries.length === 0) return [];
  const days = tries.map(({ day }) => day as number);
  const first = days.reduce((a, b) => Math.min(a, b));
  const span = days.reduce((a, b) => Math.max(a, b)) - first + 1;
  const length = Math.ceil(span / most);
  return Array.from({ length: Math.ceil(span / length) }, (_, index) => {
    const firstDay = first + index * length;
    const lastDay = firstDay + length - 1;
    const within = tries.filter(({ day = 0 }) => day >= firstDay && day <= lastDay);
    return { firstDay, lastDay, tallies: tally(within) };
  });
}
