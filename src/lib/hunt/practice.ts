import { chanceOf, type Chance } from '../predict';
import { meterError } from '../tables';
import { once, symptomsIn, symptomWords, type Fault, type Yard } from '../yard';
import { boardOf, type Board } from './board';
import { looksAt } from './looks';
import { isAlike } from './next';
import type { Settled } from './settle';
import { weightOf, type Suspect } from './suspects';
import { figureText } from './typed';

/** 1: one fault of a common kind; 2: one of any kind; 3: two at once. */
export type Level = 1 | 2 | 3;

/** A test made in practice, and what it showed. */
export interface Made {
  readonly test: string;
  readonly outcome: string;
  /** What the meter showed: "7.3 V"; undefined where none was held. */
  readonly figure: string | undefined;
}

/** A fault named in practice. */
export interface Guess {
  /** Name of the suspect. */
  readonly name: string;
  readonly isRight: boolean;
  /** How many tests had been made. */
  readonly after: number;
}

/** A practice hunt so far: plain data, but for the yard. What is hidden is not in it: it follows from yard, level and seed. */
export interface Practice {
  readonly yard: Yard;
  readonly level: Level;
  readonly seed: number;
  readonly made: readonly Made[];
  readonly guesses: readonly Guess[];
}

/** A practice hunt with nothing done yet; `seed` is a whole number from 0. */
export const practice = (yard: Yard, level: Level, seed: number): Practice => ({
  yard,
  level,
  seed,
  made: [],
  guesses: []
});

/** From this weight on a kind of fault is common. */
const COMMON = 4;
/** Faults tried for one seed before it is given up. */
const ATTEMPTS = 1000;

/** Whether something of a suspect shows without an instrument. */
const isSeen = (board: Board, { fault }: Suspect): boolean =>
  fault !== undefined && looksAt(board, [fault]).some(({ isOdd }) => isOdd);

const isDrawnFrom = (level: Level, { fault }: Suspect): boolean =>
  fault !== undefined && (level > 1 || weightOf(fault) >= COMMON);

const kindOf = ({ name }: Suspect): string => name.split(':')[0] ?? '';

/** What is hidden: different suspects, each of which shows something; every kind is as likely as another. */
function drawn(yard: Yard, level: Level, seed: number): readonly Suspect[] {
  const board = boardOf(yard);
  const chance = chanceOf(seed);
  const from = board.suspects.filter((suspect) => isDrawnFrom(level, suspect));
  const kinds = [...new Set(from.map(kindOf))];
  const found = new Set<Suspect>();
  for (let attempt = 0; attempt < ATTEMPTS && found.size < (level > 2 ? 2 : 1); attempt++) {
    const kind = chance.pick(kinds);
    const suspect = chance.pick(from.filter((each) => kindOf(each) === kind));
    if (isSeen(board, suspect)) found.add(suspect);
  }
  return [...found];
}

const drawnBefore = once<Yard, Map<string, readonly Suspect[]>>(() => new Map());

/** What was hidden at the beginning. To be told at the end only. */
export function hiddenIn({ yard, level, seed }: Practice): readonly Suspect[] {
  const before = drawnBefore(yard);
  const key = `${level} ${seed}`;
  const hidden = before.get(key) ?? drawn(yard, level, seed);
  before.set(key, hidden);
  return hidden;
}

/** The hidden suspect that naming this one finds: itself, or one that no test tells from it. */
function foundBy(yard: Yard, left: readonly Suspect[], name: string): Suspect | undefined {
  const board = boardOf(yard);
  const number = board.suspects.findIndex((each) => each.name === name);
  if (number < 0) throw new RangeError(`No suspect '${name}' in this yard.`);
  return (
    left.find((each) => each.name === name) ??
    left.find((each) => isAlike(board.stands, board.suspects.indexOf(each), number))
  );
}

/** What is still hidden. */
export const leftIn = (hunt: Practice): readonly Suspect[] =>
  hunt.guesses.reduce((left, { name, isRight }) => {
    const found = isRight ? foundBy(hunt.yard, left, name) : undefined;
    return left.filter((each) => each !== found);
  }, hiddenIn(hunt));

const faultsIn = (suspects: readonly Suspect[]): readonly Fault[] =>
  suspects.flatMap(({ fault }) => fault ?? []);

const symptomsOnce = once(symptomsIn);

/** What somebody who works the yard reports of what is still hidden. */
export const symptomsOf = (hunt: Practice): string =>
  symptomWords(symptomsOnce(hunt.yard)(...faultsIn(leftIn(hunt))));

/** A number from 0 to 1. */
const share = (chance: Chance): number => chance.upTo(FINE) / FINE;
const FINE = 2 ** 20;

/** So that each test of a hunt has an error of its own. */
const chanceNow = ({ seed, made }: Practice): Chance =>
  chanceOf((seed * 1009 + made.length + 1) * 31);

function sampled(shares: readonly number[], chance: Chance): number {
  let left = share(chance);
  const index = shares.findIndex((each) => (left -= each) < 0);
  return index < 0 ? shares.indexOf(Math.max(...shares)) : index;
}

/**
 * What a test shows of what is still hidden, by the engine, with a real meter's error that follows from
 * the seed. @throws RangeError for a test that is not there.
 */
export function readingOf(hunt: Practice, id: string): Made {
  const [stand, test] = boardOf(hunt.yard).find(id);
  const shown = stand.with(faultsIn(leftIn(hunt)));
  const chance = chanceNow(hunt);
  const { figure } = test;
  if (!figure) {
    const outcome = test.outcomes[sampled(stand.sharesOf(test, shown), chance)];
    return { test: id, outcome: outcome?.id ?? '', figure: undefined };
  }
  const reading = figure.of(shown as Settled) * (1 + meterError * (2 * share(chance) - 1));
  return { test: id, outcome: figure.outcome(reading), figure: figureText(figure, reading) };
}

/** The practice hunt after one more test. */
export const tested = (hunt: Practice, id: string): Practice => ({
  ...hunt,
  made: [...hunt.made, readingOf(hunt, id)]
});

/** The practice hunt after a suspect was named, by its name: a right one is put right. */
export function guessed(hunt: Practice, name: string): Practice {
  const isRight = foundBy(hunt.yard, leftIn(hunt), name) !== undefined;
  return { ...hunt, guesses: [...hunt.guesses, { name, isRight, after: hunt.made.length }] };
}

/** Whether nothing is hidden any more. */
export const isOver = (hunt: Practice): boolean => leftIn(hunt).length === 0;

/** A repair for nothing costs as much as so many looks. Source: common practice. */
const FOR_NOTHING = 4;

/** What the tests and wrong repairs so far cost, in looks. */
export const costOf = ({ yard, made, guesses }: Practice): number =>
  made.reduce((sum, { test }) => sum + boardOf(yard).find(test)[1].cost, 0) +
  FOR_NOTHING * guesses.filter(({ isRight }) => !isRight).length;
