import type { Told } from '../../checks';

/** What the worker says: what a run of the checks tells, that it is over, or why it could not go on. */
export type WorkerTold =
  Told | { readonly about: 'end' } | { readonly about: 'trouble'; readonly words: string };
