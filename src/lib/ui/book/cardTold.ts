import type { Card, Page } from '../../book';
import type { Progress } from '../../checks';

/** What the worker says: the operator card, how far the test card is, that card, or why there is none. */
export type CardTold =
  | { readonly about: 'operator'; readonly page: Page }
  | ({ readonly about: 'faults' } & Progress)
  | { readonly about: 'card'; readonly card: Card }
  | { readonly about: 'trouble'; readonly words: string };
