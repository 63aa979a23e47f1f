import { boxOf, lineOf, type Drawing, type Shape } from './drawing';

/**
 * Room on a printed page, mm: on A4 and on Letter alike, with 12 mm margins and a line of text.
 * Source: ISO 216 (A4, 210 × 297); ANSI/ASME Y14.1 (Letter, 8.5 × 11 in).
 */
export const page = { width: 185, height: 240 } as const;

/** Room for the heading, and for the bars that check the printer. */
const HEAD = 7;
const FOOT = 20;
/** How much neighbours both show. */
const OVERLAP = 14;
/** Room in a tile for its part of the drawing. */
const room = { width: page.width - 1, height: page.height - HEAD - FOOT };
/** From one alignment mark to the next. */
const MARKS = 60;

/** How many tiles a length takes. */
const count = (length: number, most: number): number =>
  Math.max(Math.ceil((length - OVERLAP) / (most - OVERLAP)), 1);

const upTo = (number: number): readonly number[] =>
  Array.from({ length: number }, (_, index) => index);

/** Middles of the strips which two neighbours both show. */
const seams = (tiles: number, most: number): readonly number[] =>
  upTo(tiles - 1).map((index) => (index + 1) * (most - OVERLAP) + OVERLAP / 2);

/** Crosses along a seam, the first near its beginning. */
const along = (length: number): readonly number[] =>
  upTo(Math.ceil(length / MARKS)).map((index) => 12 + index * MARKS);

const cross = (x: number, y: number): Shape => ({
  kind: 'path',
  d: `${lineOf({ x: x - 4, y }, { x: x + 4, y })}${lineOf({ x, y: y - 4 }, { x, y: y + 4 })}`,
  pen: 'thin'
});

/** Alignment marks and lines to cut along, drawn on the whole so that both neighbours show them. */
function marks({ width, height }: Drawing, across: number, down: number): readonly Shape[] {
  const upright = seams(across, room.width);
  const level = seams(down, room.height);
  const lines = [
    ...upright.map((x) => lineOf({ x, y: 0 }, { x, y: height })),
    ...level.map((y) => lineOf({ x: 0, y }, { x: width, y }))
  ];
  return [
    ...lines.map((d): Shape => ({ kind: 'path', d, pen: 'hair', dashed: true })),
    ...upright.flatMap((x) => along(height).map((y) => cross(x, y))),
    ...level.flatMap((y) => along(width).map((x) => cross(x, y)))
  ];
}

/** The outer ticks lie inside: ink ends where the length does. */
const INSIDE = 0.09;

/** A bar with a tick at each step. */
function bar(
  y: number,
  {
    length,
    steps,
    words
  }: { readonly length: number; readonly steps: number; readonly words: string }
): readonly Shape[] {
  const x = 4;
  const step = length / steps;
  return [
    { kind: 'path', d: `M${x} ${y}h${length}`, pen: 'thick' },
    ...upTo(steps + 1).map((index): Shape => {
      const at = x + Math.min(Math.max(index * step, INSIDE), length - INSIDE);
      return { kind: 'path', d: lineOf({ x: at, y: y - 2 }, { x: at, y: y + 2 }), pen: 'hair' };
    }),
    { kind: 'text', x: x + 106, y: y + 1.2, size: 3.4, text: words }
  ];
}

/** The two bars that check the printer, under `y`. */
const bars = (y: number): readonly Shape[] => [
  ...bar(y + 6, { length: 100, steps: 10, words: '100 mm, measured on paper' }),
  ...bar(y + 14, { length: 101.6, steps: 4, words: '4 in, measured on paper' })
];

/**
 * A drawing at full size on as many pages as it takes, each with the bars that check the printer.
 * Neighbours both show a strip with a line to cut along and crosses to lay on each other.
 */
export function tilesOf(drawing: Drawing): readonly Drawing[] {
  const [across, down] = [count(drawing.width, room.width), count(drawing.height, room.height)];
  const shapes = [...drawing.shapes, ...marks(drawing, across, down)];
  const all = across * down;
  return upTo(all).map((index): Drawing => {
    const [row, column] = [Math.floor(index / across), index % across];
    const from = { x: column * (room.width - OVERLAP), y: row * (room.height - OVERLAP) };
    const width = Math.min(room.width, drawing.width - from.x);
    const height = Math.min(room.height, drawing.height - from.y);
    const title =
      all === 1
        ? `${drawing.title}, full size`
        : `${drawing.title}, full size: sheet ${index + 1} of ${all}, row ${row + 1}, column ${column + 1}`;
    return {
      id: `${drawing.id}-${index + 1}`,
      title,
      width: page.width,
      height: HEAD + height + FOOT,
      shapes: [
        { kind: 'text', x: 0.5, y: 4.2, size: 3.6, text: title, bold: true },
        { kind: 'window', x: 0.5, y: HEAD, width, height, from, shapes },
        ...(all === 1
          ? []
          : [{ kind: 'path' as const, d: boxOf(0.5, HEAD, width, height), pen: 'hair' as const }]),
        ...bars(HEAD + height)
      ]
    };
  });
}
