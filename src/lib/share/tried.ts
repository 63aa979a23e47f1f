import type { Kept, KeptAs } from './entry';
import { StoreError, type WhyNot } from './shelf';

/** What the store did, or words for the reader why it did not. */
export type Stored<T, K = Kept> =
  | { readonly ok: T }
  | {
      readonly wrong: string;
      readonly why: WhyNot;
      /** In a conflict: what another tab has kept meanwhile. */
      readonly theirs?: K;
    };

/** Another tab has kept the thing meanwhile. */
export class ConflictError extends StoreError {
  constructor(
    readonly theirs: KeptAs<unknown>,
    noun: string
  ) {
    super('conflict', `Another tab has changed this ${noun}. Keep both, or take theirs.`);
  }
}

/** Does what the store is asked for, and turns what it throws into words. */
export function tried<T, K = Kept>(act: () => T): Stored<T, K> {
  try {
    return { ok: act() };
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    const theirs = error instanceof ConflictError ? { theirs: error.theirs as K } : {};
    return { wrong: error.message, why: error.why, ...theirs };
  }
}
