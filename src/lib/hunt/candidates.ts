import type { Board } from './board';
import { AGAINST, outcomeIndex, type Told } from './hunt';
import type { Suspect } from './suspects';

/** Two faults which at once explain every reading. */
export type Pair = readonly [Suspect, Suspect];

/** Whether a suspect shows an outcome, or, where it is "more than one", does its part to it. */
function helps(board: Board, { test: id, outcome }: Told, number: number): boolean {
  const [, test] = board.find(id);
  const shares = board.shares(id, number);
  if ((shares[outcomeIndex(test, outcome)] ?? 0) >= AGAINST) return true;
  return outcome === 'several' && (shares[0] ?? 0) < AGAINST;
}

/** Which readings each suspect helps to explain. */
export const marksOf = (board: Board, told: readonly Told[]): readonly (readonly boolean[])[] =>
  board.suspects.map((_, number) => told.map((each) => helps(board, each, number)));

/** The numbers of the readings that a sound yard would not give. */
export const oddIn = (marks: readonly (readonly boolean[])[]): readonly number[] =>
  (marks[0] ?? []).flatMap((isSound, reading) => (isSound ? [] : [reading]));

/** Two suspects by their numbers, and how many odd readings neither of them shows. */
interface Candidate {
  readonly numbers: readonly [number, number];
  readonly missing: number;
}

/** Most suspects of which each is paired with every other. */
const MOST_LEADING = 100;

/** What pairs can be made of these marks. */
export class Candidates {
  private readonly odd: readonly number[];
  /** Suspects that show an odd reading, those that show most of them first. */
  private readonly some: readonly number[];

  constructor(
    private readonly suspects: readonly Suspect[],
    private readonly marks: readonly (readonly boolean[])[]
  ) {
    this.odd = oddIn(marks);
    this.some = suspects
      .flatMap(({ fault }, number) =>
        fault && this.missing(number) < this.odd.length ? number : []
      )
      .sort((a, b) => this.missing(a) - this.missing(b) || this.prior(b) - this.prior(a));
  }

  /** Pairs of which one fault or the other shows each odd reading, the likeliest first. */
  apart(): readonly Pair[] {
    return this.pairs(
      this.some.flatMap((one, index) => this.with(one, this.some.slice(index + 1))),
      (missing) => missing === 0
    );
  }

  /** Pairs that would have to show some of them together, those that show most apart first. */
  together(): readonly Pair[] {
    const leading = this.some.slice(0, MOST_LEADING);
    const all = this.suspects.flatMap(({ fault }, number) => (fault ? number : []));
    return this.pairs(
      leading.flatMap((one, index) =>
        this.with(
          one,
          all.filter((other) => !leading.slice(0, index + 1).includes(other))
        )
      ),
      (missing) => missing > 0
    );
  }

  private missing(...numbers: readonly number[]): number {
    return this.odd.filter((each) => !numbers.some((number) => this.marks[number]?.[each])).length;
  }

  private prior(number: number): number {
    return this.suspects[number]?.prior ?? 0;
  }

  private with(one: number, others: readonly number[]): readonly Candidate[] {
    return others.map((other) => ({ numbers: [one, other], missing: this.missing(one, other) }));
  }

  private pairs(all: readonly Candidate[], isWanted: (missing: number) => boolean) {
    const prior = ({ numbers: [one, other] }: Candidate) => this.prior(one) * this.prior(other);
    return all
      .filter(({ missing }) => isWanted(missing))
      .sort((a, b) => a.missing - b.missing || prior(b) - prior(a))
      .map(({ numbers: [one, other] }): Pair => [
        this.suspects[one] as Suspect,
        this.suspects[other] as Suspect
      ]);
  }
}
