/** A caution: what it says first, and the rest. */
export interface Caution {
  readonly number: number;
  readonly first: string;
  readonly rest: string;
}
