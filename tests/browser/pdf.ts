import { inflateSync } from 'node:zlib';

/** A straight piece of a drawn line on a page, mm. */
export interface Piece {
  readonly length: number;
  readonly level: boolean;
}

type Matrix = readonly [number, number, number, number, number, number];

/** `inner` first, then `outer`. */
const times = ([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix => [
  a * A + b * C,
  a * B + b * D,
  c * A + d * C,
  c * B + d * D,
  e * A + f * C + E,
  e * B + f * D + F
];

/** A point of a page's default space is 1/72 in. Source: ISO 32000-1:2008, 8.3.2.3. */
const MM = 25.4 / 72;

/** The straight pieces which one content stream draws. Source: ISO 32000-1:2008, 8.3.4 (cm), 8.4.4 (q, Q), 8.5.2 (m, l). */
function piecesIn(content: string): readonly Piece[] {
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let at = { x: 0, y: 0 };
  const saved: Matrix[] = [];
  const pieces: Piece[] = [];
  const on = (x: number, y: number) => ({
    x: (x * matrix[0] + y * matrix[2] + matrix[4]) * MM,
    y: (x * matrix[1] + y * matrix[3] + matrix[5]) * MM
  });
  let numbers: number[] = [];
  for (const word of content.split(/\s+/)) {
    const number = Number(word);
    if (word !== '' && !Number.isNaN(number)) {
      numbers.push(number);
      continue;
    }
    const [x = 0, y = 0] = numbers;
    if (word === 'q') saved.push(matrix);
    else if (word === 'Q') matrix = saved.pop() ?? matrix;
    else if (word === 'cm') matrix = times(numbers as unknown as Matrix, matrix);
    else if (word === 'm') at = on(x, y);
    else if (word === 'l') {
      const to = on(x, y);
      const [dx, dy] = [Math.abs(to.x - at.x), Math.abs(to.y - at.y)];
      pieces.push({ length: Math.hypot(dx, dy), level: dy < 0.01 });
      at = to;
    }
    numbers = [];
  }
  return pieces;
}

/** The straight pieces of all pages of a PDF whose streams are deflated, as Chromium writes it. */
export function piecesOf(pdf: Buffer): readonly Piece[] {
  const text = pdf.toString('latin1');
  const streams = text.matchAll(/<<[^<>]*\/FlateDecode[^<>]*\/Length (\d+)[^<>]*>>\s*stream\r?\n/g);
  return [...streams].flatMap((match) => {
    const start = match.index + match[0].length;
    const content = inflateSync(pdf.subarray(start, start + Number(match[1]))).toString('latin1');
    return / cm\n/.test(content) ? piecesIn(content) : [];
  });
}
