import type { YardFile } from './file';
import { isLink, readLink } from './link';
import { MAX_FILE_BYTES } from './limits';
import { shownName } from './names';
import { isPng, readPng } from './png';
import { readSvg } from './svg';
import { readText } from './text';
import { UnreadableError, type WhyWrong } from './wrong';

/** A yard, or words for the reader why there is none. */
export type Opened = { readonly ok: YardFile } | { readonly wrong: string; readonly why: WhyWrong };

/** How each kind of text is known, and read. */
const kinds: readonly [is: (text: string) => boolean, read: (text: string) => YardFile][] = [
  [(text) => /^\s*[[{]/.test(text), readText],
  [(text) => /^\s*</.test(text) && /<(?:\w{1,20}:)?svg\b/i.test(text), readSvg],
  [isLink, readLink]
];

function fromText(text: string): YardFile {
  const bare = text.replace(/^\ufeff/, '');
  if (bare.trim() === '') throw new UnreadableError('empty', 'There is nothing in it.');
  const kind = kinds.find(([is]) => is(bare));
  if (!kind) {
    throw new UnreadableError(
      'foreign',
      'This holds no yard. A link, a .yard.json file, or a picture saved here can be opened.'
    );
  }
  return kind[1](bare);
}

/** Text of bytes, in UTF-8 or, where a byte order mark says so, UTF-16. */
function textOf(bytes: Uint8Array): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  try {
    return new TextDecoder(wide ? 'utf-16le' : 'utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new UnreadableError(
      'foreign',
      'This is neither text nor a PNG picture. A yard’s link, file or picture can be opened.'
    );
  }
}

function read(input: string | Uint8Array): YardFile {
  if (input.length > MAX_FILE_BYTES) throw tooBig(input.length);
  if (typeof input === 'string') return fromText(input);
  return isPng(input) ? readPng(input) : fromText(textOf(input));
}

const tooBig = (bytes: number): UnreadableError =>
  new UnreadableError(
    'too big',
    `This is ${Math.ceil(bytes / 1e6)} MB. At most ${MAX_FILE_BYTES / 1e6} MB can be opened.`
  );

function refused(error: unknown, name?: string): Opened {
  const known = error instanceof UnreadableError;
  const words = known ? error.message : 'This could not be read. Ask for it again.';
  const wrong = name === undefined ? words : `${shownName(name)}: ${words}`;
  return { wrong, why: known ? error.why : 'damaged' };
}

/**
 * Opens a link, a file's text, or a file's bytes, whatever it is. It never throws, and changes
 * nothing; `name` is the file's, said before the words.
 */
export function open(input: string | Uint8Array, name?: string): Opened {
  try {
    return { ok: read(input) };
  } catch (error) {
    return refused(error, name);
  }
}

/** What is needed of a file that was picked or dropped; the page's own has this form. */
export interface SomeFile {
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

/** Opens a file; one that is too big is not even read. It never throws. */
export async function openFile(file: SomeFile): Promise<Opened> {
  try {
    if (file.size > MAX_FILE_BYTES) throw tooBig(file.size);
    return open(new Uint8Array(await file.arrayBuffer()), file.name);
  } catch (error) {
    return refused(error, file.name);
  }
}
