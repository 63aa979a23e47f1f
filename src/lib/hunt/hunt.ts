import type { Yard } from '../yard';
import { boardOf, type Board } from './board';
import type { Test } from './kinds';
import type { Suspect } from './suspects';

/** One test made, and what it showed. */
export interface Told {
  /** Id of the test. */
  readonly test: string;
  /** Id of its outcome. */
  readonly outcome: string;
}

/** A hunt so far: plain data, but for the yard. */
export interface Hunt {
  readonly yard: Yard;
  /** How often a reading is wrong, as a share: 0 to 0.1. */
  readonly wrong: number;
  readonly told: readonly Told[];
  /** The one road whose fault is looked for, where two things are wrong at once: only tests that feed it are advised. */
  readonly only?: string;
  /** Names of suspects that were put right and changed nothing. */
  readonly out?: readonly string[];
}

/** Most readings that are taken to be wrong. Source: common practice. */
const MOST_WRONG = 0.1;

/** A hunt with nothing told yet. `wrong` is how often a reading may be wrong, 0 to 0.1. */
export function beginHunt(yard: Yard, wrong = MOST_WRONG): Hunt {
  if (!(wrong >= 0 && wrong <= MOST_WRONG))
    throw new RangeError(`wrong is ${wrong}: give a share from 0 to ${MOST_WRONG}.`);
  return { yard, wrong, told: [] };
}

/** Number of an outcome of a test. @throws RangeError for one that it cannot show. */
export const outcomeIndex = (test: Test, outcome: string): number => {
  const index = test.outcomes.findIndex(({ id }) => id === outcome);
  if (index >= 0) return index;
  const allowed = test.outcomes.map(({ id }) => id).join(', ');
  throw new RangeError(`'${test.id}' cannot show '${outcome}': it shows ${allowed}.`);
};

/** The hunt after one more reading. @throws RangeError for a test or outcome that is not there. */
export function told(hunt: Hunt, test: string, outcome: string): Hunt {
  outcomeIndex(boardOf(hunt.yard).find(test)[1], outcome);
  return { ...hunt, told: [...hunt.told, { test, outcome }] };
}

/** The hunt without its last reading. */
export const undone = (hunt: Hunt): Hunt => ({ ...hunt, told: hunt.told.slice(0, -1) });

/** Chance of a reading when it should show so with the chance `share`: any outcome is as likely as another when it is wrong. */
const chanceOf = (share: number, wrong: number, count: number): number =>
  (1 - wrong) * share + wrong / count;

/** Weight of each suspect after every reading, as a share; all 0 when none explains them. */
export function weights({ wrong, told: all, out }: Hunt, board: Board): readonly number[] {
  const raw = board.suspects.map(({ name, prior }) => (out?.includes(name) ? 0 : prior));
  for (const { test: id, outcome } of all) {
    const [stand, test] = board.find(id);
    const index = outcomeIndex(test, outcome);
    raw.forEach((weight, number) => {
      if (weight === 0) return;
      const share = stand.sharesOf(test, stand.of(number))[index] ?? 0;
      raw[number] = weight * chanceOf(share, wrong, test.outcomes.length);
    });
  }
  const sum = raw.reduce((total, weight) => total + weight, 0);
  return sum === 0 ? raw.map(() => 0) : raw.map((weight) => weight / sum);
}

/** A reading that a suspect does not explain. */
export interface Against {
  readonly test: Test;
  readonly outcome: string;
  /** What the test would show, were it this suspect: the likeliest outcome, in words. */
  readonly expected: string;
}

/** A suspect, how likely it is by now, and what speaks against it. */
export interface Suspected {
  readonly suspect: Suspect;
  readonly chance: number;
  readonly against: readonly Against[];
}

/** Below this share of what it would show a reading speaks against a suspect. Source: common practice. */
export const AGAINST = 0.01;

/** The readings that a suspect, by its number, does not explain. */
export function againstOf(hunt: Hunt, board: Board, number: number): readonly Against[] {
  return hunt.told.flatMap(({ test: id, outcome }) => {
    const [, test] = board.find(id);
    const shares = board.shares(id, number);
    if ((shares[outcomeIndex(test, outcome)] ?? 0) >= AGAINST) return [];
    const likeliest = shares.indexOf(Math.max(...shares));
    return [{ test, outcome, expected: test.outcomes[likeliest]?.words ?? '' }];
  });
}

/** Every suspect, the likeliest first, and what speaks against each. */
export function suspects(hunt: Hunt): readonly Suspected[] {
  const board = boardOf(hunt.yard);
  const now = weights(hunt, board);
  return board.suspects
    .map((suspect, number) => ({
      suspect,
      chance: now[number] ?? 0,
      against: againstOf(hunt, board, number)
    }))
    .sort((a, b) => b.chance - a.chance);
}

/** What to think of when no single fault explains every reading. */
export const otherWays: readonly string[] = [
  'One reading is wrong: make the last tests again.',
  'Two things are wrong at once: put one right, and begin anew.',
  'The yard is not as drawn: compare its wires with the wiring book.'
];

/** Whether no single suspect explains every reading. */
export const isUnexplained = (hunt: Hunt): boolean => {
  const board = boardOf(hunt.yard);
  return (
    hunt.told.length > 0 &&
    board.suspects.every((_, number) => againstOf(hunt, board, number).length > 0)
  );
};
