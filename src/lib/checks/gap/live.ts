import { madeBy, sizeOf, type Choice } from './count';
import { closesLoop, nearest, type Case, type Near } from './loop';
import { handsOf, handWork, type Control, type Hands } from './settings';

/** Most states of knowledge about one cluster. */
const MOST_STATES = 2 ** 16;

/** A road that depends on its controls in too many ways to try. */
export class TooManyError extends Error {
  readonly code = 'too-many-choices';
  constructor(readonly where: string) {
    super(`Road ${where} can be live in too many ways: at most ${MOST_STATES} are tried.`);
    this.name = 'TooManyError';
  }
}

/** Stands of controls that do not rest, in the order of the controls' names. */
type Picks = readonly (readonly [control: number, stand: number])[];

/** When some cases are live, by the controls that have a say. */
export interface Lives {
  readonly controls: readonly number[];
  /** Settings of these controls that make one of the cases live. */
  readonly count: bigint;
  /** The least that hands have to do for it; of several the first by name. */
  readonly fewest: Picks | undefined;
}

const never: Lives = { controls: [], count: 0n, fewest: undefined };
const always: Lives = { controls: [], count: 1n, fewest: [] };

/** Works out when some cases are live: controls are chosen one by one, and what is known once is not asked again. */
class Asking {
  readonly #known = new Map<string, Lives>();
  /** Place of each control when they are put in order by name. */
  readonly #ranks: readonly number[];
  #states = 0;

  constructor(
    readonly cases: readonly Case[],
    readonly all: readonly Control[]
  ) {
    const names = all.map(({ name }) => name).sort();
    this.#ranks = all.map(({ name }) => names.indexOf(name));
  }

  /** When one of these is live with some controls chosen: surely, never, or as what is left of their ways says. */
  lives(cases: readonly Case[], choice: Choice): Lives {
    const hoped = cases.filter((each) => this.#closes(each, choice, true));
    if (hoped.length === 0) return never;
    if (hoped.some((each) => this.#closes(each, choice, false))) return always;
    const left = hoped.map((each) =>
      nearest(each, (contact) => this.#standing(each, choice, contact))
    );
    const key = hoped.map((each, at) => `${this.cases.indexOf(each)}:${left[at]?.key}`).join(' ');
    const known = this.#known.get(key);
    if (known) return known;

    if (++this.#states > MOST_STATES) throw new TooManyError(this.cases[0]?.rails.name ?? '');
    const lives = this.#choose(hoped, choice, this.#next(hoped, left));
    this.#known.set(key, lives);
    return lives;
  }

  #closes = (each: Case, choice: Choice, hope: boolean): boolean =>
    closesLoop(each, madeBy(each.network.wiring, choice, hope));

  /** Whether a contact is made; undefined while its control may still do either. */
  #standing({ network: { wiring } }: Case, choice: Choice, contact: number): boolean | undefined {
    const sure = madeBy(wiring, choice)(contact);
    return sure === madeBy(wiring, choice, true)(contact) ? sure : undefined;
  }

  /** The control to choose next: that of a contact on the shortest way of the first case. */
  #next([first]: readonly Case[], [near]: readonly Near[]): number {
    return first?.network.wiring.switched[near?.open ?? -1]?.by as number;
  }

  #choose(cases: readonly Case[], choice: Choice, control: number): Lives {
    const stands = (this.all[control] as Control).stands.map((_, stand) =>
      this.lives(cases, choice.with(control, stand))
    );
    const others = [...new Set(stands.flatMap(({ controls }) => controls))];
    const count = stands.reduce((sum, { count: own, controls }) => {
      const free = others.filter((each) => !controls.includes(each));
      return sum + own * sizeOf(free, this.all);
    }, 0n);
    const ways = stands.flatMap(({ fewest }, stand) =>
      fewest ? [stand === 0 ? fewest : this.#with(fewest, [control, stand])] : []
    );
    const [fewest] = ways.sort((a, b) => (this.#isLess(a, b) ? -1 : 1));
    return { controls: [control, ...others], count, fewest };
  }

  #with = (picks: Picks, pick: Picks[number]): Picks =>
    [...picks, pick].sort(([a], [b]) => (this.#ranks[a] ?? 0) - (this.#ranks[b] ?? 0));

  #isLess(one: Picks, other: Picks): boolean {
    const [a, b] = [handsIn(one, this.all), handsIn(other, this.all)];
    const less = handWork(a) - handWork(b);
    return less === 0 ? this.#nameOf(one) < this.#nameOf(other) : less < 0;
  }

  #nameOf = (picks: Picks): string =>
    picks
      .map(([control, stand]) => `${this.all[control]?.name} ${this.all[control]?.stands[stand]}`)
      .join();
}

/**
 * When one of some cases is live, whatever the controls do that have no say. A choice of controls is
 * followed no further when a case is live though nothing left open is made, or all are dead though all of
 * it is: one more closed contact never takes a path away. Two choices that leave the same ways to the
 * rails leave the same to be found, and are followed once.
 * @throws TooManyError after 65 536 different ones.
 */
export const livesOf = (cases: readonly Case[], all: readonly Control[]): Lives =>
  new Asking(cases, all).lives(
    cases,
    all.map(() => undefined)
  );

/** The hands of some picks. */
export const handsIn = (picks: Picks, all: readonly Control[]): Hands => {
  const stands = new Map(picks);
  return handsOf(
    all,
    all.map((_, control) => stands.get(control) ?? 0)
  );
};
