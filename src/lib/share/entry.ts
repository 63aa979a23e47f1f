import { isPlain } from './canonical';
import { compactText, type YardFile } from './file';
import { readText } from './text';
import { UnreadableError } from './wrong';

/** Which keeping of a yard this is: the count goes up each time, and says which tab kept it. */
export interface Mark {
  readonly id: string;
  readonly revision: number;
  readonly by: string;
}

/** A yard as this device keeps it. */
export interface Kept extends Mark {
  /** When it was kept, ms since 1970. */
  readonly changed: number;
  readonly file: YardFile;
}

/** What stands under a yard's key: a yard, one of a newer version, or something spoilt. */
export type Entry = Kept | 'newer' | 'spoilt';

/** An entry's text. */
export const entryText = ({ revision, by, changed, file }: Kept): string =>
  JSON.stringify({ revision, by, changed, file: compactText(file) });

/** Reads an entry's text; it never throws. */
export function readEntry(id: string, text: string): Entry {
  try {
    const entry: unknown = JSON.parse(text);
    if (!isPlain(entry)) return 'spoilt';
    const { revision, by, changed, file } = entry;
    const sound =
      Number.isSafeInteger(revision) &&
      typeof by === 'string' &&
      typeof changed === 'number' &&
      typeof file === 'string';
    if (!sound) return 'spoilt';
    return { id, revision: revision as number, by, changed, file: readText(file) };
  } catch (error) {
    return error instanceof UnreadableError && error.why === 'newer' ? 'newer' : 'spoilt';
  }
}
