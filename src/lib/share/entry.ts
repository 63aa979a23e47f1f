import { isPlain } from './canonical';
import type { YardFile } from './file';
import { UnreadableError } from './wrong';

/** Which keeping of a thing this is: the count goes up each time, and says which tab kept it. */
export interface Mark {
  readonly id: string;
  readonly revision: number;
  readonly by: string;
}

/** A thing as this device keeps it. */
export interface KeptAs<F> extends Mark {
  /** When it was kept, ms since 1970. */
  readonly changed: number;
  readonly file: F;
}
/** A yard as this device keeps it. */
export type Kept = KeptAs<YardFile>;

/** What stands under a key: a thing, one of a newer version, or something spoilt. */
export type Entry<F> = KeptAs<F> | 'newer' | 'spoilt';

/** How a thing is written and read. */
export interface Written<F> {
  readonly text: (file: F) => string;
  /** @throws UnreadableError */
  readonly read: (text: string) => F;
}

/** An entry's text. */
export const entryText = <F>(
  form: Written<F>,
  { revision, by, changed, file }: KeptAs<F>
): string => JSON.stringify({ revision, by, changed, file: form.text(file) });

/** Reads an entry's text; it never throws. */
export function readEntry<F>(form: Written<F>, id: string, text: string): Entry<F> {
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
    return { id, revision: revision as number, by, changed, file: form.read(file) };
  } catch (error) {
    return error instanceof UnreadableError && error.why === 'newer' ? 'newer' : 'spoilt';
  }
}
