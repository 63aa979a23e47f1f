import { yardForm, type YardFile } from './file';
import { elsewhere, otherThan, type Form } from './form';
import { isLink, readLinkAs } from './link';
import { MAX_FILE_BYTES } from './limits';
import { shownName } from './names';
import { isPng, readPng } from './png';
import { readSvg } from './svg';
import { readAs } from './text';
import { UnreadableError, type WhyWrong } from './wrong';

/** What was opened, or words for the reader why there is nothing. */
export type OpenedAs<T> = { readonly ok: T } | { readonly wrong: string; readonly why: WhyWrong };
/** A yard, or words for the reader why there is none. */
export type Opened = OpenedAs<YardFile>;

/** A further kind of text in which a thing may stand: how it is known, and read. */
type Kind<T> = readonly [is: (text: string) => boolean, read: (text: string) => T];

/** Beside its JSON and its link, what else a thing of this form may stand in. */
interface Ways<T> {
  readonly form: Form<T>;
  readonly kinds: readonly Kind<T>[];
  readonly png?: (bytes: Uint8Array) => T;
  /** What can be opened, as a sentence. */
  readonly allowed: string;
}

function fromText<T>({ form, kinds, allowed }: Ways<T>, text: string): T {
  const bare = text.replace(/^\ufeff/, '');
  if (bare.trim() === '') throw new UnreadableError('empty', 'There is nothing in it.');
  const all: readonly Kind<T>[] = [
    [(each) => /^\s*[[{]/.test(each), (each) => readAs(form, each)],
    ...kinds,
    [(each) => isLink(form.of, each), (each) => readLinkAs(form, each)]
  ];
  const kind = all.find(([is]) => is(bare));
  if (kind) return kind[1](bare);
  const other = otherThan(form.of, (each) => isLink(each, bare));
  throw other
    ? elsewhere(other)
    : new UnreadableError('foreign', `This holds no ${form.of.noun}. ${allowed}`);
}

/** Text of bytes, in UTF-8 or, where a byte order mark says so, UTF-16. */
function textOf(bytes: Uint8Array, allowed: string): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe;
  try {
    return new TextDecoder(wide ? 'utf-16le' : 'utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new UnreadableError('foreign', `This is neither text nor a PNG picture. ${allowed}`);
  }
}

function read<T>(ways: Ways<T>, input: string | Uint8Array): T {
  if (input.length > MAX_FILE_BYTES) throw tooBig(input.length);
  if (typeof input === 'string') return fromText(ways, input);
  if (ways.png && isPng(input)) return ways.png(input);
  return fromText(ways, textOf(input, ways.allowed));
}

const tooBig = (bytes: number): UnreadableError =>
  new UnreadableError(
    'too big',
    `This is ${Math.ceil(bytes / 1e6)} MB. At most ${MAX_FILE_BYTES / 1e6} MB can be opened.`
  );

function refused(error: unknown, name?: string) {
  const known = error instanceof UnreadableError;
  const words = known ? error.message : 'This could not be read. Ask for it again.';
  const wrong = name === undefined ? words : `${shownName(name)}: ${words}`;
  return { wrong, why: known ? error.why : ('damaged' as const) };
}

/** What is needed of a file that was picked or dropped; the page's own has this form. */
export interface SomeFile {
  readonly name: string;
  /** Bytes. */
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

/**
 * How things of one form are opened. `open` takes a link, a file's text, or a file's bytes, whatever
 * it is; `name` is the file's, said before the words. `openFile` does not even read what is too big.
 * Neither throws, or changes anything.
 */
export function opener<T>(ways: Ways<T>) {
  function open(input: string | Uint8Array, name?: string): OpenedAs<T> {
    try {
      return { ok: read(ways, input) };
    } catch (error) {
      return refused(error, name);
    }
  }
  async function openFile(file: SomeFile): Promise<OpenedAs<T>> {
    try {
      if (file.size > MAX_FILE_BYTES) throw tooBig(file.size);
      return open(new Uint8Array(await file.arrayBuffer()), file.name);
    } catch (error) {
      return refused(error, file.name);
    }
  }
  return { open, openFile };
}

/** Opens a yard: a link, a `.yard.json` file, or a picture that was saved here. */
export const { open, openFile } = opener<YardFile>({
  form: yardForm,
  kinds: [[(text) => /^\s*</.test(text) && /<(?:\w{1,20}:)?svg\b/i.test(text), readSvg]],
  png: readPng,
  allowed: 'A link, a .yard.json file, or a picture saved here can be opened.'
});
