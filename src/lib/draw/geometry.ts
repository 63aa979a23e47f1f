/** A point in the drawing, px. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Corners of a line made of straight pieces, in the order in which one follows it. */
export type Polyline = readonly Point[];

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

const legs = (line: Polyline): readonly (readonly [Point, Point])[] =>
  line.slice(1).map((end, index) => [line[index] as Point, end] as const);

/** Length of a line, px. */
export const lengthOf = (line: Polyline): number =>
  legs(line).reduce((sum, [a, b]) => sum + distance(a, b), 0);

/** Point and heading (degrees, clockwise from east) at `along` px from the start. */
export function at(line: Polyline, along: number): Point & { readonly angle: number } {
  let left = Math.max(along, 0);
  const all = legs(line);
  for (const [index, [a, b]] of all.entries()) {
    const length = distance(a, b);
    if (left <= length || index === all.length - 1) {
      const share = length === 0 ? 0 : Math.min(left / length, 1);
      const angle = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
      return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), angle };
    }
    left -= length;
  }
  return { ...(line[0] as Point), angle: 0 };
}

/** The stretch of a line between two distances from its start. */
export function cut(line: Polyline, from: number, to: number): Polyline {
  let gone = 0;
  const inner = legs(line).flatMap(([a, b]) => {
    gone += distance(a, b);
    return gone > from && gone < to ? [b] : [];
  });
  return [at(line, from), ...inner, at(line, to)].map(({ x, y }) => ({ x, y }));
}

/** The longest straight piece, as distances from the start. */
export function longest(line: Polyline): { readonly from: number; readonly to: number } {
  let gone = 0;
  let best = { from: 0, to: 0 };
  for (const [a, b] of legs(line)) {
    const length = distance(a, b);
    if (length > best.to - best.from) best = { from: gone, to: gone + length };
    gone += length;
  }
  return best;
}

/** The same line `by` px to its right; its corners are right angles. */
export function offset(line: Polyline, by: number): Polyline {
  const normals = legs(line).map(([a, b]) => {
    const length = distance(a, b) || 1;
    return { x: (-(b.y - a.y) / length) * by, y: ((b.x - a.x) / length) * by };
  });
  return line.map((point, index) => {
    const before = normals[index - 1];
    const after = normals[index];
    const straight = before && after && before.x === after.x && before.y === after.y;
    const shift =
      before && after && !straight
        ? { x: before.x + after.x, y: before.y + after.y }
        : (after ?? before ?? { x: 0, y: 0 });
    return { x: point.x + shift.x, y: point.y + shift.y };
  });
}

/** SVG path data of a line. */
export const pathOf = (line: Polyline): string =>
  line.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');

/** Coordinates to a tenth of a pixel. */
export const round = (value: number): number => Math.round(value * 10) / 10;
