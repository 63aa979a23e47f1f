import type * as v from 'valibot';
import type { Run } from '../runs';
import type { Yard } from '../yard';

/** What a fault may ask about the moment: the yard, and where its deck stands. */
export interface Now {
  readonly yard: Yard;
  readonly deckMm: number;
}

/** One kind of fault: how it is written, where it can be, what it does, how it is told and put right. */
export interface FaultKind<S extends v.GenericSchema = v.GenericSchema> {
  /** The key that tells this kind from the others. */
  readonly key: string;
  readonly schema: S;
  /** Every fault of this kind that this yard can have. */
  readonly places: (yard: Yard) => readonly v.InferOutput<S>[];
  /** Where it is; two faults of one kind at one place are one fault. */
  readonly place: (fault: v.InferOutput<S>) => string;
  /**
   * Parts that lie in the runs which it changes; none where it changes no run of the yard's own. `change`
   * and `adds` look at no other run.
   */
  readonly at: (fault: v.InferOutput<S>, yard: Yard) => readonly string[];
  /** Whether it only opens what was closed, or adds ohms to it, whatever else is done. */
  readonly opens?: true;
  /** Whether what it does depends on where the deck stands. */
  readonly byDeck?: true;
  /** What it does to the wiring once hands have set the contacts. */
  readonly change?: (runs: readonly Run[], fault: v.InferOutput<S>, now: Now) => readonly Run[];
  /** Metal where none belongs, laid after the wire edits, so that it stays on its studs. */
  readonly adds?: (runs: readonly Run[], fault: v.InferOutput<S>, now: Now) => readonly Run[];
  /** What is wrong, as a clause. */
  readonly words: (fault: v.InferOutput<S>) => string;
  /** What puts it right, as a clause. The supply is unplugged first, as before any change of wires. */
  readonly repair: (fault: v.InferOutput<S>) => string;
  readonly example: v.InferInput<S>;
}

/** Lets the compiler tie a fault's schema to its functions. */
export const faultKind = <S extends v.GenericSchema>(kind: FaultKind<S>): FaultKind<S> => kind;
