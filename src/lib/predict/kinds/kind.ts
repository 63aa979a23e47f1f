import type * as v from 'valibot';
import type { Action, Reading, Scene, Yard } from '../../yard';

/** One thing to decide: a name and the answers one can choose from. */
export interface Asked {
  readonly id: string;
  readonly options: readonly string[];
}

/** A scene before and after what is done, as the engine plays it. */
export interface Played {
  readonly yard: Yard;
  readonly before: Scene;
  readonly after: Scene;
  readonly reading: Reading;
  /** What is done, once the locos run as fast as they will, before any meets the end of its road. */
  readonly settled: Scene;
  /** Plays another action from the same start. */
  readonly play: (action: Action) => Played;
}

/** One kind of question: how it is written, what it asks, and how the engine's play answers it. */
export interface QuestionKind<S extends v.GenericSchema = v.GenericSchema> {
  /** The key of the call block that tells this kind from the others. */
  readonly key: string;
  readonly schema: S;
  readonly asked: (spec: v.InferOutput<S>) => readonly Asked[];
  readonly answer: (spec: v.InferOutput<S>, played: Played) => Readonly<Record<string, string>>;
  /** Locos, meters and lamps that must be on the board. */
  readonly names: (spec: v.InferOutput<S>) => readonly string[];
  /** Locos, meters and lamps whose state would give the answer away. */
  readonly hides: (spec: v.InferOutput<S>) => readonly string[];
}

/** Lets the compiler tie a kind's schema to its functions. */
export const questionKind = <S extends v.GenericSchema>(kind: QuestionKind<S>): QuestionKind<S> =>
  kind;
