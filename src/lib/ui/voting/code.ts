import { encode } from 'uqr';

/** Quiet zone around a code, in modules. Source: ISO/IEC 18004, 4 modules on each side. */
const QUIET = 4;

/** A code to scan: the side of its square, quiet zone included, and its dark modules as an SVG path. */
export interface ScanCode {
  readonly side: number;
  readonly path: string;
}

/**
 * The code to scan (ISO/IEC 18004) of a text; about 15 % of it may be hidden.
 * @example scanCode('HELLO').side // 29: version 1 has 21 modules, and 4 on each side
 */
export function scanCode(text: string): ScanCode {
  const { data, size } = encode(text, { ecc: 'M', border: 0 });
  const squares = data.flatMap((row, y) =>
    row.flatMap((dark, x) => (dark ? [`M${x + QUIET} ${y + QUIET}h1v1h-1z`] : []))
  );
  return { side: size + 2 * QUIET, path: squares.join('') };
}
