import { fromBase64url, toBase64url } from './base64url';
import { crc32 } from './crc';
import { compactText, type YardFile } from './file';
import { deflated, inflated, TooMuchError } from './inflate';
import { MAX_LINK, MAX_TEXT } from './limits';
import { readText } from './text';
import { UnreadableError } from './wrong';

/** How the bytes of a link are laid out; a new layout is a new number. */
const LAYOUT = 1;
/** Before the yard: layout, 1 byte; length of the yard, 2; CRC-32 of the yard, 4. Greatest byte first. */
const HEAD = 7;
const MARK = 'yard=';

/** The fragment of a link, with its `#`: the yard stands in it, so that no server ever sees it. */
export function linkFragment(file: YardFile): string {
  const yard = deflated(new TextEncoder().encode(compactText(file)));
  const bytes = new Uint8Array(HEAD + yard.length);
  const view = new DataView(bytes.buffer);
  view.setUint8(0, LAYOUT);
  view.setUint16(1, yard.length);
  view.setUint32(3, crc32(yard));
  bytes.set(yard, HEAD);
  return `#${MARK}${toBase64url(bytes)}`;
}

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

/** The yard's own bytes, whole and unchanged. What follows them is not ours, and left out. */
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
  const yard = bytes.subarray(HEAD, HEAD + view.getUint16(1));
  if (yard.length < view.getUint16(1)) throw cut();
  if (crc32(yard) !== view.getUint32(3)) throw changed();
  return yard;
}

function unfolded(yard: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(inflated(yard, MAX_TEXT));
  } catch (error) {
    throw error instanceof TooMuchError
      ? new UnreadableError(
          'too much',
          'This link unfolds to far more than a yard can need. It was not opened.'
        )
      : new UnreadableError(
          'damaged',
          'This link’s content is damaged. Ask for it again, or for a file.'
        );
  }
}

/** Whether a text has, or is, a link's fragment. */
export const isLink = (text: string): boolean => /(^|#)yard=/.test(text.trim());

/**
 * Reads a link, or its fragment. Line breaks and blanks that a letter put into it do no harm.
 * @throws UnreadableError with words for the reader.
 */
export function readLink(text: string): YardFile {
  const from = text.indexOf(MARK) + MARK.length;
  const [code = ''] =
    /^[\w-]*/.exec(text.slice(from, from + MAX_LINK + 1).replace(/\s+/g, '')) ?? [];
  if (code.length > MAX_LINK) {
    throw new UnreadableError(
      'too big',
      `This link is too long: at most ${MAX_LINK} characters are read.`
    );
  }
  return readText(unfolded(payload(fromBase64url(code))));
}
