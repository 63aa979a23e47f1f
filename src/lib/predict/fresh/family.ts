import type * as v from 'valibot';
import type { SceneSchema, YardInput } from '../../yard';
import type { questionEntries } from '../question';
import type { Chance } from './chance';

/** Words for a wrong answer: the idea behind it, the one place to look at, the cause. */
export interface Cause {
  /** Code of the wrong idea, M1 to M20. */
  readonly idea: string;
  readonly at: string;
  readonly say: string;
}

/** A wrong answer to one thing asked, beside what the engine says of it. */
export interface Miss {
  readonly id: string;
  readonly option: string;
  readonly answer: string;
  /** The first open place of the row of the loco asked about, when its row is open. */
  readonly open: string | undefined;
}

type QuestionInput = v.InferInput<v.StrictObjectSchema<typeof questionEntries, undefined>>;

/** A call as a family writes it, before the engine has looked at it. */
export interface Draft {
  readonly yard: YardInput;
  readonly scene: v.InferInput<typeof SceneSchema>;
  readonly question: QuestionInput;
  /** What there is to know of the yard; a few short sentences. */
  readonly tells: string;
  readonly ask: string;
  readonly cause: (miss: Miss) => Cause;
  readonly show?: readonly ('rows' | 'plan')[];
}

/** Calls on one idea: any number of them, each from its own seed. */
export interface Family {
  readonly id: string;
  /** Number of the lesson whose idea it is. */
  readonly lesson: number;
  readonly draft: (chance: Chance) => Draft;
}
