import type { Yard } from '../yard';
import { boardOf, type Board } from './board';
import { weights, type Hunt } from './hunt';
import type { Outcome, Test } from './kinds';
import type { Stand } from './stand';
import type { Suspect } from './suspects';

/** What an outcome would mean. */
export interface Meaning {
  readonly outcome: Outcome;
  /** How likely it is by now. */
  readonly chance: number;
  /** Suspects which it leaves, the likeliest first. */
  readonly stay: readonly Suspect[];
}

/** The test that is worth most. */
export interface Advice {
  readonly test: Test;
  /** Information that it is expected to give, bits. */
  readonly bits: number;
  readonly means: readonly Meaning[];
}

/** A suspect less likely than this share of the likeliest is left out of the choice. */
const OUT_OF_MIND = 1e-4;
/** With more suspects in mind than this one looks first, before any instrument comes out. Source: common practice. */
const MANY = 60;
/** Less than this is no information: what the sums leave over, bits. */
const NO_BITS = 1e-9;
/** A set this likely is named, though readings can be wrong. Source: common practice. */
const SURE = 0.95;
/** How often one test is made at most: a second time shows that it was misread. */
const AGAIN = 2;

const entropy = (shares: readonly number[]): number =>
  shares.reduce((sum, share) => (share > 0 ? sum - share * Math.log2(share) : sum), 0);

/** Suspects which a moment shows alike, with their weights together. */
interface Alike {
  readonly settled: object;
  readonly members: readonly number[];
  readonly weight: number;
}

/** What may be the matter, by number, and how likely it is. */
export interface State {
  readonly board: Board;
  /** Where tests may be made. */
  readonly stands: readonly Stand[];
  readonly weights: readonly number[];
  /** Numbers of the suspects that are still in mind. */
  readonly alive: readonly number[];
  readonly wrong: number;
  readonly tired: ReadonlySet<string>;
}

function stateOf(hunt: Hunt): State {
  const board = boardOf(hunt.yard);
  const now = weights(hunt, board);
  const least = Math.max(...now) * OUT_OF_MIND;
  const times = new Map<string, number>();
  for (const { test } of hunt.told) times.set(test, (times.get(test) ?? 0) + 1);
  const most = hunt.wrong > 0 ? AGAIN : 1;
  const { only } = hunt;
  return {
    board,
    stands: board.stands.filter(
      ({ tests }) => only === undefined || (tests[0]?.moment.roads.includes(only) ?? false)
    ),
    weights: now,
    alive: now.flatMap((weight, number) => (weight > least ? [number] : [])),
    wrong: hunt.wrong,
    tired: new Set([...times].flatMap(([test, count]) => (count >= most ? [test] : [])))
  };
}

function alikeIn(stand: Stand, { alive, weights: now }: State): readonly Alike[] {
  const found = new Map<object, number[]>();
  for (const number of alive) {
    const settled = stand.of(number);
    const members = found.get(settled);
    if (members) members.push(number);
    else found.set(settled, [number]);
  }
  return [...found].map(([settled, members]) => ({
    settled,
    members,
    weight: members.reduce((sum, number) => sum + (now[number] ?? 0), 0)
  }));
}

const noisy = (shares: readonly number[], wrong: number): readonly number[] =>
  shares.map((share) => (1 - wrong) * share + wrong / shares.length);

/** Information that a test is expected to give: what its outcome leaves open less what it would in any case. */
function bitsOf(stand: Stand, test: Test, alike: readonly Alike[], wrong: number): number {
  const all = test.outcomes.map(() => 0);
  let blur = 0;
  let sum = 0;
  for (const { settled, weight } of alike) {
    const shares = noisy(stand.sharesOf(test, settled), wrong);
    shares.forEach((share, index) => (all[index] = (all[index] ?? 0) + weight * share));
    blur += weight * entropy(shares);
    sum += weight;
  }
  return entropy(all.map((share) => share / sum)) - blur / sum;
}

interface Best {
  readonly stand: Stand;
  readonly test: Test;
  readonly bits: number;
  readonly alike: readonly Alike[];
}

const worth = (found: Best | undefined): number => (found ? found.bits / found.test.cost : NO_BITS);

interface Choice extends State {
  readonly isAllowed: (test: Test) => boolean;
}

/**
 * Information that a test can give at most: whether a suspect is one of those that may show something
 * there, and which outcome those show. Source: the chain rule of mutual information.
 */
function mostBits(stand: Stand, state: State): (test: Test) => number {
  let [seen, sum] = [0, 0];
  for (const number of state.alive) {
    const weight = state.weights[number] ?? 0;
    sum += weight;
    if (!stand.isBlindTo(number)) seen += weight;
  }
  const share = seen / sum;
  return ({ outcomes }) => entropy([share, 1 - share]) + share * Math.log2(outcomes.length);
}

function bestIn(stand: Stand, state: Choice, before: Best | undefined): Best | undefined {
  const allowed = stand.tests.filter((test) => !state.tired.has(test.id) && state.isAllowed(test));
  if (allowed.length === 0) return before;
  const most = mostBits(stand, state);
  const open = allowed.filter((test) => most(test) / test.cost > worth(before));
  if (open.length === 0) return before;
  const alike = alikeIn(stand, state);
  if (alike.length < 2) return before;
  const sum = alike.reduce((total, { weight }) => total + weight, 0);
  const spread = entropy(alike.map(({ weight }) => weight / sum));
  let best = before;
  for (const test of open) {
    if (spread / test.cost <= worth(best)) continue;
    const bits = bitsOf(stand, test, alike, state.wrong);
    if (bits > NO_BITS && bits / test.cost > worth(best)) best = { stand, test, bits, alike };
  }
  return best;
}

/** A test that needs no instrument, of a road that is switched on. */
const isLook = ({ id, kind, moment }: Test): boolean =>
  looks.includes(id) || (moment.kind === 'own' && ['run', 'panelLamp', 'stray'].includes(kind));

/** The rounds of such tests. */
const looks: readonly string[] = ['round run', 'round panelLamp', 'round stray own'];

/** The allowed test with the most expected information for its effort. */
export const bestOf = (state: State, isAllowed: (test: Test) => boolean): Best | undefined =>
  state.stands.reduce<Best | undefined>(
    (best, stand) => bestIn(stand, { ...state, isAllowed }, best),
    undefined
  );

/** Whether no test made at these stands tells two suspects, by their numbers, apart. */
export const isAlike = (stands: readonly Stand[], one: number, other: number): boolean =>
  stands.every((stand) => {
    const [mine, its] = [stand.of(one), stand.of(other)];
    return (
      mine === its ||
      stand.tests.every((test) => {
        const shares = stand.sharesOf(test, its);
        return stand.sharesOf(test, mine).every((share, index) => share === shares[index]);
      })
    );
  });

/** Suspects which no test of the board tells from the likeliest one, itself the first. */
export function inseparable({ stands, weights: now, alive }: State): readonly number[] {
  const ranked = [...alive].sort((a, b) => (now[b] ?? 0) - (now[a] ?? 0));
  const [first] = ranked;
  if (first === undefined) return [];
  return ranked.filter((number) => isAlike(stands, first, number));
}

const isSure = ({ weights: now }: State, set: readonly number[]): boolean =>
  set.reduce((sum, number) => sum + (now[number] ?? 0), 0) >= SURE;

function meaningsOf({ stand, test, alike }: Best, state: State): readonly Meaning[] {
  const sum = alike.reduce((total, { weight }) => total + weight, 0);
  return test.outcomes.flatMap((outcome, index) => {
    const shown = alike.filter(({ settled }) => (stand.sharesOf(test, settled)[index] ?? 0) > 0);
    const chance = alike.reduce(
      (total, { settled, weight }) =>
        total + (weight / sum) * (noisy(stand.sharesOf(test, settled), state.wrong)[index] ?? 0),
      0
    );
    const stay = shown
      .flatMap(({ members }) => members)
      .sort((a, b) => (state.weights[b] ?? 0) - (state.weights[a] ?? 0));
    if (chance === 0) return [];
    return [{ outcome, chance, stay: stay.flatMap((each) => state.board.suspects[each] ?? []) }];
  });
}

/**
 * The test with the most expected information for its effort; undefined when the hunt is at its
 * end: one suspect is left, or a set that no test tells apart, or none that explains the readings.
 */
export function nextTest(hunt: Hunt): Advice | undefined {
  const state = stateOf(hunt);
  if (state.alive.length < 2) return undefined;
  if (hunt.wrong > 0 && isSure(state, inseparable(state))) return undefined;
  const look = state.alive.length > MANY ? bestOf(state, isLook) : undefined;
  const best = look ?? bestOf(state, () => true);
  return best && { test: best.test, bits: best.bits, means: meaningsOf(best, state) };
}

/** The likeliest suspect and those which no test tells from it; empty when none explains the readings. */
export function named(hunt: Hunt): readonly Suspect[] {
  const state = stateOf(hunt);
  return inseparable(state).flatMap((number) => state.board.suspects[number] ?? []);
}

/** Information that a test is expected to give as a hunt stands, bits. @throws RangeError for a test that is not there. */
export function worthOf(hunt: Hunt, id: string): number {
  const state = stateOf(hunt);
  return worthIn(state, ...state.board.find(id));
}

/** Information that a test at this stand is expected to give, bits. */
export const worthIn = (state: State, stand: Stand, test: Test): number =>
  state.alive.length < 2 ? 0 : Math.max(0, bitsOf(stand, test, alikeIn(stand, state), state.wrong));

/** How far some work is. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}

/**
 * Works out what the first advice of a yard needs, a moment at a time, and says how far it is: a caller
 * can show it, and stop. Every advice after it comes at once.
 */
export function* readySteps(yard: Yard): Generator<Progress, void> {
  const { stands, suspects } = boardOf(yard);
  const looked = stands.flatMap((stand) => {
    const tests = stand.tests.filter(
      (test) => isLook(test) && test.kind !== 'round' && !test.byLive
    );
    return tests.length > 0 ? [{ stand, tests }] : [];
  });
  for (const [index, { stand, tests }] of looked.entries()) {
    suspects.forEach((_, number) => {
      const shown = stand.of(number);
      for (const test of tests) stand.sharesOf(test, shown);
    });
    yield { done: index + 1, of: looked.length };
  }
}
