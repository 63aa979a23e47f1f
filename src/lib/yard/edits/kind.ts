import type * as v from 'valibot';
import type { Run } from '../runs';

/** One kind of wire edit: how it is written, what it does to the wiring, how it is told. */
export interface EditKind<S extends v.GenericSchema = v.GenericSchema> {
  /** The key that tells this kind from the others. */
  readonly key: string;
  readonly schema: S;
  readonly apply: (runs: readonly Run[], edit: v.InferOutput<S>) => readonly Run[];
  readonly words: (edit: v.InferOutput<S>) => string;
  readonly example: v.InferInput<S>;
}

/** Lets the compiler tie an edit's schema to its functions. */
export const editKind = <S extends v.GenericSchema>(kind: EditKind<S>): EditKind<S> => kind;
