import type { Plain } from '../canonical';

/** One version of the file's form. Only the newest has no way to a next one. */
export interface Version {
  readonly version: number;
  /** What a file of this version says, in the form of the next: values that were defaults then are written out. */
  readonly toNext?: (file: Plain) => Plain;
}
