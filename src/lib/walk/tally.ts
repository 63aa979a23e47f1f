/** Votes for each option, in the order of the options. */
export type Tally = readonly number[];

/** What the room should do next, told without a chart. */
export type QuietWord = 'hint' | 'discuss' | 'go on';

/** Most people a tally can hold for one option. */
export const MOST_VOTES = 200;

/** Fewer people than this are not counted, and fewer than that not in shares. Source: common practice. */
const COUNTED = 6;
const IN_SHARES = 12;

/** Between these shares of right first votes talking helps most. Source: Crouch & Mazur 2001; Vickrey et al. 2015. */
const HINT_BELOW = 0.35;
const GO_ON_ABOVE = 0.7;

/** All votes of a tally. */
export const votesIn = (tally: Tally): number => tally.reduce((sum, votes) => sum + votes, 0);

/** Votes of two tallies, option by option. */
export const addTallies = (one: Tally, other: Tally): Tally =>
  one.map((votes, index) => votes + (other[index] ?? 0));

/**
 * What the first vote calls for, where `right` is the place of the right option: a hint below 35 %
 * right, talk from 35 to 70 %, the answer above. Of 6 to 11 people, a third on each of two answers
 * means talk; fewer are not counted.
 */
export function quietWord(tally: Tally, right: number): QuietWord | undefined {
  const all = votesIn(tally);
  if (all < COUNTED) return undefined;
  const split = tally.filter((votes) => 3 * votes >= all).length > 1;
  if (all < IN_SHARES && split) return 'discuss';
  const share = (tally[right] ?? 0) / all;
  if (share < HINT_BELOW) return 'hint';
  return share > GO_ON_ABOVE ? 'go on' : 'discuss';
}
