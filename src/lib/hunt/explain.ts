import type { Fault } from '../yard';
import { boardOf, type Board } from './board';
import { Candidates, marksOf, oddIn, type Pair } from './candidates';
import { AGAINST, againstOf, outcomeIndex, type Hunt, type Told } from './hunt';
import type { Test } from './kinds';
import type { Suspect } from './suspects';

/** A reading that all others speak against: without it something explains them. */
export interface WrongReading {
  /** Its number among the readings. */
  readonly index: number;
  readonly test: Test;
  readonly outcome: string;
  /** Suspects that explain all others, the likeliest first. */
  readonly suspects: readonly Suspect[];
}

const byPrior = (all: readonly Suspect[]): readonly Suspect[] =>
  [...all].sort((a, b) => b.prior - a.prior);

/** Each single reading which, if it was wrong, lets one fault explain all others; make those tests again first. */
export function wrongReadings(hunt: Hunt): readonly WrongReading[] {
  const board = boardOf(hunt.yard);
  return hunt.told.flatMap(({ test: id, outcome }, index): readonly WrongReading[] => {
    const rest = { ...hunt, told: hunt.told.filter((_, each) => each !== index) };
    const fits = board.suspects.filter((_, each) => againstOf(rest, board, each).length === 0);
    const [, test] = board.find(id);
    return fits.length === 0 ? [] : [{ index, test, outcome, suspects: byPrior(fits) }];
  });
}

/** Pairs of faults that explain what no single fault does. */
export interface Pairs {
  /** The likeliest first. */
  readonly pairs: readonly Pair[];
  /** Pairs tried, of how many that could be: fewer where there were too many to try. */
  readonly tried: number;
  readonly of: number;
}

/** Most pairs tried in the engine. */
const MOST_TRIED = 20_000;

/** How likely a reading is with these faults in. */
function shareOf(board: Board, { test: id, outcome }: Told, faults: readonly Fault[]): number {
  const [stand, test] = board.find(id);
  return stand.sharesOf(test, stand.with(faults))[outcomeIndex(test, outcome)] ?? 0;
}

/**
 * Pairs of faults that explain every reading, tried in the engine with both in; at most `most` are, the
 * likeliest first. `apart`: those of which each reading that a sound yard would not give is shown by one
 * fault alone, or is "more than one" of which both show something. `together`: those that show one of
 * these readings only both at once.
 */
export function pairsThat(how: 'apart' | 'together', hunt: Hunt, most = MOST_TRIED): Pairs {
  const board = boardOf(hunt.yard);
  const marks = marksOf(board, hunt.told);
  const odd = oddIn(marks);
  const told = [...hunt.told.filter((_, each) => odd.includes(each)), ...hunt.told];
  const all = new Candidates(board.suspects, marks)[how]();
  const some = all.slice(0, most);
  const explains = (pair: Pair): boolean => {
    const faults = pair.flatMap(({ fault }) => fault ?? []);
    return told.every((each) => shareOf(board, each, faults) >= AGAINST);
  };
  return { pairs: some.filter(explains), tried: some.length, of: all.length };
}

/** Pairs of faults that explain every reading; those that show it only together where no others do. */
export function pairsOf(hunt: Hunt): Pairs {
  const apart = pairsThat('apart', hunt);
  if (apart.pairs.length > 0) return apart;
  const { pairs, tried, of } = pairsThat('together', hunt);
  return { pairs, tried: apart.tried + tried, of: apart.of + of };
}

/** What came of the pairs, in words. */
export function pairsWords({ pairs, tried, of }: Pairs): string {
  const rest =
    tried < of ? ` Of ${of} pairs that could be, only the ${tried} likeliest were tried.` : '';
  if (pairs.length === 0) return `No pair of faults that was tried explains every reading.${rest}`;
  const are =
    pairs.length === 1 ? 'One pair of faults explains' : `${pairs.length} pairs of faults explain`;
  return `${are} every reading.${rest}`;
}
