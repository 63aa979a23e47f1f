import { crc32 } from './crc';
import { asciiText, type YardFile } from './file';
import { MAX_CHUNKS, MAX_TEXT } from './limits';
import { readText } from './text';
import { UnreadableError } from './wrong';

/** Source: PNG (third edition), 5.2. */
const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Length, type and CRC of a chunk, 4 bytes each. Source: PNG, 5.3. */
const FRAME = 12;
/** A textual chunk's keyword and the zero byte after it. Source: PNG, 11.3.3.2. */
const KEYWORD = 'ohmyard\0';

interface Chunk {
  readonly type: string;
  /** Where it begins and ends in the file, frame and all. */
  readonly from: number;
  readonly to: number;
  /** Type and data: what the CRC is taken of. */
  readonly checked: Uint8Array;
  readonly crc: number;
}

const latin = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
const isYard = ({ type, checked }: Chunk): boolean =>
  type === 'tEXt' && latin(checked.subarray(4, 4 + KEYWORD.length)) === KEYWORD;

const cut = () =>
  new UnreadableError(
    'cut',
    'This picture breaks off before its end. Ask for the whole file again.'
  );

/** Whether bytes begin as a PNG does. */
export const isPng = (bytes: Uint8Array): boolean =>
  SIGNATURE.every((byte, index) => bytes[index] === byte);

/** The chunks of a PNG, up to its end. */
function* chunksOf(bytes: Uint8Array): Generator<Chunk> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let from = SIGNATURE.length;
  for (let count = 0; count < MAX_CHUNKS; count++) {
    if (from + FRAME > bytes.length) throw cut();
    const to = from + FRAME + view.getUint32(from);
    if (to > bytes.length) throw cut();
    const checked = bytes.subarray(from + 4, to - 4);
    const type = latin(checked.subarray(0, 4));
    yield { type, from, to, checked, crc: view.getUint32(to - 4) };
    if (type === 'IEND') return;
    from = to;
  }
  throw new UnreadableError(
    'too much',
    'This picture is cut into too many pieces to look for a yard.'
  );
}

function yardChunk(file: YardFile): Uint8Array {
  const text = new TextEncoder().encode(`tEXt${KEYWORD}${asciiText(file)}`);
  const chunk = new Uint8Array(text.length + 8);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, text.length - 4);
  chunk.set(text, 4);
  view.setUint32(text.length + 4, crc32(text));
  return chunk;
}

/** @throws UnreadableError */
function mustBePng(bytes: Uint8Array): void {
  if (!isPng(bytes)) throw new UnreadableError('foreign', 'This is no PNG picture.');
}

/**
 * The picture with the yard inside, in a textual chunk; a yard that is there already is replaced.
 * @throws UnreadableError when the bytes are no whole PNG.
 */
export function writePng(bytes: Uint8Array, file: YardFile): Uint8Array {
  mustBePng(bytes);
  const parts: Uint8Array[] = [bytes.subarray(0, SIGNATURE.length)];
  for (const chunk of chunksOf(bytes)) {
    if (chunk.type === 'IEND') parts.push(yardChunk(file));
    if (!isYard(chunk)) parts.push(bytes.subarray(chunk.from, chunk.to));
  }
  const whole = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let to = 0;
  for (const part of parts) {
    whole.set(part, to);
    to += part.length;
  }
  return whole;
}

/**
 * Reads the yard inside a PNG picture.
 * @throws UnreadableError with words for the reader.
 */
export function readPng(bytes: Uint8Array): YardFile {
  mustBePng(bytes);
  for (const chunk of chunksOf(bytes)) {
    if (!isYard(chunk)) continue;
    if (chunk.checked.length > MAX_TEXT) {
      throw new UnreadableError(
        'too much',
        'This picture holds far more text than a yard can need. It was not opened.'
      );
    }
    if (crc32(chunk.checked) !== chunk.crc) {
      throw new UnreadableError(
        'changed',
        'This picture was changed on its way: its check sum is wrong. Ask for it again.'
      );
    }
    return readText(latin(chunk.checked.subarray(4 + KEYWORD.length)));
  }
  throw new UnreadableError(
    'no yard',
    'This picture has no yard inside. Open one that was saved here.'
  );
}
