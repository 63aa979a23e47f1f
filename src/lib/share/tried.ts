import type { Kept } from './entry';
import { StoreError, type WhyNot } from './shelf';

/** What the store did, or words for the reader why it did not. */
export type Stored<T> =
  | { readonly ok: T }
  | {
      readonly wrong: string;
      readonly why: WhyNot;
      /** In a conflict: what another tab has kept meanwhile. */
      readonly theirs?: Kept;
    };

/** Another tab has kept the yard meanwhile. */
export class ConflictError extends StoreError {
  constructor(readonly theirs: Kept) {
    super('conflict', 'Another tab has changed this yard. Keep both, or take theirs.');
  }
}

/** Does what the store is asked for, and turns what it throws into words. */
export function tried<T>(act: () => T): Stored<T> {
  try {
    return { ok: act() };
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    const theirs = error instanceof ConflictError ? { theirs: error.theirs } : {};
    return { wrong: error.message, why: error.why, ...theirs };
  }
}
