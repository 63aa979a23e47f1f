import type { CheckOptions, Told } from '../../checks';
import type { Yard } from '../../yard';

/** What the worker is to check, and what the user has set. */
export interface Job {
  readonly yard: Yard;
  readonly options: CheckOptions;
}

/** What the worker says: what a run of the checks tells, that it is over, or why it could not go on. */
export type WorkerTold =
  Told | { readonly about: 'end' } | { readonly about: 'trouble'; readonly words: string };
