import type { Progress } from '../../hunt';
import type { HuntReading, PracticeNotes } from '../../share';
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
  readonly outcomes: readonly {
    readonly id: string;
    readonly words: string;
    /** What it may seem to say, and does not. */
    readonly mind: string | undefined;
  }[];
  /** Ids of the two points where probes are held. */
  readonly pair: readonly [string, string] | undefined;
  /** The roads that the moment feeds, and those that it should leave dead. */
  readonly roads: readonly string[];
  readonly others: readonly string[];
  /** The supply has to be unplugged for it. */
  readonly isDead: boolean;
  /** Unit of the number that a meter shows in it. */
  readonly unit: 'V' | 'Ω' | undefined;
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

/** What else could explain readings which no single fault does. */
export interface ExplainedTold {
  /** Readings, by their number from 0, without which one fault explains the rest. */
  readonly wrong: readonly {
    readonly index: number;
    readonly test: string;
    readonly outcome: string;
    readonly count: number;
    readonly first: readonly string[];
  }[];
  /** What came of pairs of faults, and the likeliest of them. */
  readonly words: string;
  readonly pairs: readonly (readonly [string, string])[];
}

/** A hunt as it is asked about. */
export interface HuntAsked {
  readonly wrong: number;
  readonly told: readonly HuntReading[];
  /** Another test than the advised one. */
  readonly test?: string | undefined;
}

/** A step of a practice hunt looked back at. */
export interface StepBack {
  readonly test: string;
  readonly before: number;
  readonly after: number;
  /** How often a test was expected to halve the suspects; a better one for its cost, in words, and how often that was. */
  readonly better: string | undefined;
  readonly bits: number;
  readonly betterBits: number | undefined;
}

/** How a practice hunt stands; what is hidden is told once it is over. */
export interface PracticeTold {
  readonly level: 1 | 2 | 3;
  readonly seed: number;
  /** What was seen first, and what still is. */
  readonly seen: string;
  readonly symptoms: string;
  readonly cost: number;
  readonly made: readonly {
    readonly test: string;
    readonly outcome: string;
    readonly figure: string | undefined;
  }[];
  readonly guesses: readonly {
    readonly name: string;
    readonly words: string;
    readonly isRight: boolean;
    /** How many tests had been made. */
    readonly after: number;
  }[];
  readonly isGivenUp: boolean;
  /** How many faults are still hidden. */
  readonly left: number;
  /** Whether advice was asked for, and the advised test; none where no test would tell more. */
  readonly isAdvised: boolean;
  readonly advice: string | undefined;
  /** What the advice would name then. */
  readonly names: readonly { readonly name: string; readonly words: string }[];
  readonly hidden: readonly SuspectTold[];
  readonly review: ReviewTold | undefined;
}

export interface ReviewTold {
  readonly yours: { readonly tests: number; readonly cost: number };
  readonly best: { readonly tests: number; readonly cost: number } | undefined;
  readonly steps: readonly StepBack[];
  /** Number of the step at which most was given away; undefined where nothing was. */
  readonly weakest: number | undefined;
}

/** A reading as it was typed, and the outcome that it is, or what is wrong with it. */
export interface TypedTold {
  readonly test: string;
  readonly text: string;
  readonly outcome: string | undefined;
  readonly words: string;
}

/** What is done in a practice hunt. */
export type PracticeAsk =
  | { readonly do: 'begin'; readonly level: 1 | 2 | 3; readonly seed: number }
  | { readonly do: 'resume'; readonly kept: PracticeNotes }
  | { readonly do: 'try'; readonly test: string }
  | { readonly do: 'name'; readonly name: string }
  | { readonly do: 'advise' }
  | { readonly do: 'give up' };

/** What the page asks of the worker: first a yard, then what is to be known of hunts in it. */
export type HuntAsk =
  | { readonly about: 'yard'; readonly yard: Yard }
  | { readonly about: 'hunt'; readonly number: number; readonly hunt: HuntAsked }
  | { readonly about: 'typed'; readonly test: string; readonly text: string }
  | { readonly about: 'practice'; readonly ask: PracticeAsk };

/** What the worker says. */
export type HuntTold =
  | {
      readonly about: 'tests';
      readonly tests: readonly TestTold[];
      readonly suspects: readonly NamedTold[];
    }
  | ({ readonly about: 'ready' } & Progress)
  | { readonly about: 'stand'; readonly number: number; readonly stand: StandTold }
  | {
      readonly about: 'explained';
      readonly number: number;
      readonly explained: ExplainedTold;
    }
  | { readonly about: 'typed'; readonly typed: TypedTold }
  | { readonly about: 'practice'; readonly practice: PracticeTold }
  /** The yard does not show what the practice hunt was told. */
  | { readonly about: 'stale' }
  | { readonly about: 'trouble'; readonly words: string };

/** A suspect that can be named. */
export interface NamedTold {
  readonly name: string;
  /** The part that is at fault. */
  readonly place: string;
  readonly words: string;
}
