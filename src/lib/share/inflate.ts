import { deflateSync, Inflate } from 'fflate';

/** Bytes unfolded at a time: each can become 1032 at most, so the bound is passed by 66 KB at worst. */
const STEP = 64;

/** Thrown by `inflated` when more comes out than may. */
export class TooMuchError extends Error {
  constructor(readonly bytes: number) {
    super(`More than allowed: ${bytes} bytes, and not at the end.`);
    this.name = 'TooMuchError';
  }
}

/** Bytes made smaller. Source: RFC 1951. */
export const deflated = (bytes: Uint8Array): Uint8Array => deflateSync(bytes, { level: 9 });

/**
 * The bytes again. Stops as soon as more than `most` have come out.
 * @throws TooMuchError; an error of the library when the bytes are damaged or break off.
 */
export function inflated(bytes: Uint8Array, most: number): Uint8Array {
  const parts: Uint8Array[] = [];
  let length = 0;
  let ended = false;
  const stream = new Inflate((part, last) => {
    parts.push(part);
    length += part.length;
    ended = last;
  });
  for (let from = 0; from < bytes.length && !ended; from += STEP) {
    stream.push(bytes.subarray(from, from + STEP), from + STEP >= bytes.length);
    if (length > most) throw new TooMuchError(length);
  }
  const whole = new Uint8Array(length);
  let to = 0;
  for (const part of parts) {
    whole.set(part, to);
    to += part.length;
  }
  return whole;
}
