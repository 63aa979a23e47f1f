import { fromBase64url, toBase64url } from './base64url';
import { crc32 } from './crc';
import { compactText, yardForm, type YardFile } from './file';
import type { Form, Format } from './form';
import { deflated, inflated, TooMuchError } from './inflate';
import { MAX_LINK } from './limits';
import { readAs } from './text';
import { UnreadableError } from './wrong';

/** How the bytes of a link are laid out; a new layout is a new number. */
const LAYOUT = 1;
/** Before the content: layout, 1 byte; length of the content, 2; CRC-32 of it, 4. Greatest byte first. */
const HEAD = 7;

/**
 * The fragment of a link to what this text says, with its `#`: all stands in it, so that no server
 * ever sees it. Undefined where it would be longer than is read.
 */
export function fragmentOf({ mark }: Format, text: string): string | undefined {
  const content = deflated(new TextEncoder().encode(text));
  const bytes = new Uint8Array(HEAD + content.length);
  const view = new DataView(bytes.buffer);
  view.setUint8(0, LAYOUT);
  view.setUint16(1, content.length);
  view.setUint32(3, crc32(content));
  bytes.set(content, HEAD);
  const code = toBase64url(bytes);
  return code.length > MAX_LINK ? undefined : `#${mark}=${code}`;
}

/** The fragment of a link to a yard, with its `#`; none is too long. */
export const linkFragment = (file: YardFile): string =>
  fragmentOf(yardForm.of, compactText(file)) as string;

const cut = () =>
  new UnreadableError(
    'cut',
    'This link breaks off before its end. Ask for the whole link, or for a file.'
  );
const changed = () =>
  new UnreadableError(
    'changed',
    'This link was changed on its way: its check sum is wrong. Ask for it again.'
  );

/** The content's own bytes, whole and unchanged. What follows them is not ours, and left out. */
function payload(bytes: Uint8Array): Uint8Array {
  if (bytes.length < HEAD) throw cut();
  const view = new DataView(bytes.buffer);
  const layout = view.getUint8(0);
  if (layout !== LAYOUT) {
    throw new UnreadableError(
      'newer',
      `This link is of layout ${layout}; this page reads ${LAYOUT}. It may be newer, or damaged.`
    );
  }
  const content = bytes.subarray(HEAD, HEAD + view.getUint16(1));
  if (content.length < view.getUint16(1)) throw cut();
  if (crc32(content) !== view.getUint32(3)) throw changed();
  return content;
}

function unfolded(content: Uint8Array, { of, maxText }: Form<unknown>): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(inflated(content, maxText));
  } catch (error) {
    throw error instanceof TooMuchError
      ? new UnreadableError(
          'too much',
          `This link unfolds to far more than a ${of.noun} can need. It was not opened.`
        )
      : new UnreadableError(
          'damaged',
          'This link’s content is damaged. Ask for it again, or for a file.'
        );
  }
}

/** Whether a text has, or is, the fragment of a link to such a thing. */
export const isLink = ({ mark }: Format, text: string): boolean =>
  new RegExp(`(^|#)${mark}=`).test(text.trim());

/**
 * Reads a link, or its fragment. Line breaks and blanks that a letter put into it do no harm.
 * @throws UnreadableError with words for the reader.
 */
export function readLinkAs<T>(form: Form<T>, text: string): T {
  const mark = `${form.of.mark}=`;
  const from = text.indexOf(mark) + mark.length;
  const [code = ''] =
    /^[\w-]*/.exec(text.slice(from, from + MAX_LINK + 1).replace(/\s+/g, '')) ?? [];
  if (code.length > MAX_LINK) {
    throw new UnreadableError(
      'too big',
      `This link is too long: at most ${MAX_LINK} characters are read.`
    );
  }
  return readAs(form, unfolded(payload(fromBase64url(code)), form));
}

/**
 * Reads a link to a yard, or its fragment.
 * @throws UnreadableError with words for the reader.
 */
export const readLink = (text: string): YardFile => readLinkAs(yardForm, text);
