import type { Fault } from '../yard';
import { boardOf, type Board } from './board';
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

/** Two faults which at once explain every reading. */
export type Pair = readonly [Suspect, Suspect];

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

/** Whether a suspect shows an outcome, or, where it is "more than one", does its part to it. */
function helps(board: Board, { test: id, outcome }: Told, number: number): boolean {
  const [, test] = board.find(id);
  const shares = board.shares(id, number);
  if ((shares[outcomeIndex(test, outcome)] ?? 0) >= AGAINST) return true;
  return outcome === 'several' && (shares[0] ?? 0) < AGAINST;
}

/** Which readings each suspect helps to explain. */
const marksOf = (board: Board, told: readonly Told[]): readonly (readonly boolean[])[] =>
  board.suspects.map((_, number) => told.map((each) => helps(board, each, number)));

/** Pairs of which one fault or the other, or a sound yard, shows each reading; the likeliest first. */
function candidates({ suspects }: Board, marks: readonly (readonly boolean[])[]): readonly Pair[] {
  const odd = (marks[0] ?? []).flatMap((isSound, reading) => (isSound ? [] : [reading]));
  const some = suspects.flatMap((suspect, number) =>
    suspect.fault && odd.some((reading) => marks[number]?.[reading]) ? [number] : []
  );
  const found: Pair[] = [];
  some.forEach((one, index) => {
    for (const other of some.slice(index + 1)) {
      if (!odd.every((reading) => marks[one]?.[reading] || marks[other]?.[reading])) continue;
      found.push([suspects[one] as Suspect, suspects[other] as Suspect]);
    }
  });
  return found.sort((a, b) => b[0].prior * b[1].prior - a[0].prior * a[1].prior);
}

/**
 * Pairs of faults that explain every reading, tried in the engine with both in. A pair is tried where
 * each reading which a sound yard would not give is shown by one of its faults alone, or is "more than
 * one" of which both show something; `most` of them at most, the likeliest first.
 */
export function pairsOf(hunt: Hunt, most = MOST_TRIED): Pairs {
  const board = boardOf(hunt.yard);
  const marks = marksOf(board, hunt.told);
  const all = candidates(board, marks);
  const some = all.slice(0, most);
  const isSound = (index: number): number => (marks[0]?.[index] ? 1 : 0);
  const oddFirst = [...hunt.told.keys()].sort((a, b) => isSound(a) - isSound(b));
  const explains = (pair: Pair): boolean => {
    const faults = pair.flatMap(({ fault }) => fault ?? []);
    return oddFirst.every((index) => shareOf(board, hunt.told[index] as Told, faults) >= AGAINST);
  };
  return { pairs: some.filter(explains), tried: some.length, of: all.length };
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
