import type { Card, Progress } from '../../book';

/** What the worker says of a test card: how far it is, the card, or why there is none. */
export type CardTold =
  | ({ readonly about: 'faults' } & Progress)
  | { readonly about: 'card'; readonly card: Card }
  | { readonly about: 'trouble'; readonly words: string };
