import type { HuntReading } from '../../share';
import type { Yard } from '../../yard';

/** A test as the page shows it. */
export interface TestTold {
  readonly id: string;
  readonly kind: string;
  /** Id of the moment in which it is made, and how that is set, in words. */
  readonly moment: string;
  readonly set: string;
  /** What to do. */
  readonly words: string;
  /** Where, in a list of tests of its kind. */
  readonly place: string;
  readonly cost: number;
  readonly outcomes: readonly { readonly id: string; readonly words: string }[];
  /** Ids of the two points where probes are held. */
  readonly pair: readonly [string, string] | undefined;
  /** The roads that the moment feeds, and those that it should leave dead. */
  readonly roads: readonly string[];
  readonly others: readonly string[];
  /** The supply has to be unplugged for it. */
  readonly isDead: boolean;
}

/** What an outcome would mean. */
export interface MeaningTold {
  readonly outcome: string;
  /** How many suspects it leaves, and the likeliest of them in words. */
  readonly count: number;
  readonly first: readonly string[];
}

export interface SuspectTold {
  readonly name: string;
  readonly words: string;
  readonly repair: string;
  readonly chance: number;
}

/** A reading that speaks against suspects which none before it spoke against. */
export interface OutTold {
  readonly test: string;
  readonly outcome: string;
  readonly count: number;
  /** Some of them, each with what it would have shown. */
  readonly some: readonly { readonly words: string; readonly expected: string }[];
}

/** How a hunt stands. */
export interface StandTold {
  /** The readings that belong to this yard; `lost` others do not. */
  readonly told: readonly HuntReading[];
  readonly lost: number;
  /** The test to make next, and what its outcomes would mean; none at the hunt's end. */
  readonly test: string | undefined;
  readonly means: readonly MeaningTold[];
  readonly isAdvice: boolean;
  /** Suspects that still fit: how many, of how many, and the likeliest. */
  readonly open: number;
  readonly all: number;
  readonly likely: readonly SuspectTold[];
  readonly out: readonly OutTold[];
  readonly named: readonly SuspectTold[];
  readonly isUnexplained: boolean;
  /** The test which showed the fault last, and what it shows of a sound yard. */
  readonly proof: { readonly test: string; readonly outcome: string } | undefined;
}

/** A hunt as it is asked about. */
export interface HuntAsked {
  readonly wrong: number;
  readonly told: readonly HuntReading[];
  /** Another test than the advised one. */
  readonly test?: string | undefined;
}

/** What the page asks of the worker: first a yard, then how hunts in it stand. */
export type HuntAsk =
  | { readonly about: 'yard'; readonly yard: Yard }
  | { readonly about: 'hunt'; readonly number: number; readonly hunt: HuntAsked };

/** What the worker says. */
export type HuntTold =
  | { readonly about: 'tests'; readonly tests: readonly TestTold[]; readonly suspects: number }
  | { readonly about: 'stand'; readonly number: number; readonly stand: StandTold }
  | { readonly about: 'trouble'; readonly words: string };
