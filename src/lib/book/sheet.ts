import type { Yard } from '../yard';

/** A table of a sheet. An empty cell is a place to write in, at the bench. */
export interface Table {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number)[])[];
  readonly note?: string;
}

/** What a sheet says: sentences, then tables. */
export interface Page {
  readonly says: readonly string[];
  readonly tables: readonly Table[];
}

/** One sheet of the wiring book, made from a yard. */
export interface Sheet {
  readonly id: string;
  readonly title: string;
  readonly make: (yard: Yard) => Page;
}
