import { line } from 'd3';

/** A point in the drawing, px. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A box in the drawing, px. */
export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

/** The square box around a point that reaches `half` px to each side. */
export const boxAt = ({ x, y }: Point, half: number): Box => ({
  x: x - half,
  y: y - half,
  width: 2 * half,
  height: 2 * half
});

/** Corners of a line made of straight pieces, in the order in which one follows it. */
export type Polyline = readonly Point[];

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

const legs = (points: Polyline): readonly (readonly [Point, Point])[] =>
  points.slice(1).map((end, index) => [points[index] as Point, end] as const);

/** Length of a line, px. */
export const lengthOf = (points: Polyline): number =>
  legs(points).reduce((sum, [a, b]) => sum + distance(a, b), 0);

/** Distance of a point from a line, px. */
export const distanceTo = (points: Polyline, { x, y }: Point): number =>
  Math.min(
    ...legs(points).map(([a, b]) => {
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const share = ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1);
      const inside = Math.min(Math.max(share, 0), 1);
      return Math.hypot(a.x + inside * dx - x, a.y + inside * dy - y);
    })
  );

/** Point and heading (degrees, clockwise from east) at `along` px from the start. */
export function at(points: Polyline, along: number): Point & { readonly angle: number } {
  let left = Math.max(along, 0);
  const all = legs(points);
  for (const [index, [a, b]] of all.entries()) {
    const length = distance(a, b);
    if (left <= length || index === all.length - 1) {
      const share = length === 0 ? 0 : Math.min(left / length, 1);
      const angle = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
      return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y), angle };
    }
    left -= length;
  }
  return { ...(points[0] as Point), angle: 0 };
}

/** The stretch of a line between two distances from its start. */
export function cut(points: Polyline, from: number, to: number): Polyline {
  let gone = 0;
  const inner = legs(points).flatMap(([a, b]) => {
    gone += distance(a, b);
    return gone > from && gone < to ? [b] : [];
  });
  return [at(points, from), ...inner, at(points, to)].map(({ x, y }) => ({ x, y }));
}

/** The longest straight piece, as distances from the start. */
export function longest(points: Polyline): { readonly from: number; readonly to: number } {
  let gone = 0;
  let best = { from: 0, to: 0 };
  for (const [a, b] of legs(points)) {
    const length = distance(a, b);
    if (length > best.to - best.from) best = { from: gone, to: gone + length };
    gone += length;
  }
  return best;
}

/** The same line `by` px to its right; its corners are right angles. */
export function offset(points: Polyline, by: number): Polyline {
  const normals = legs(points).map(([a, b]) => {
    const length = distance(a, b) || 1;
    return { x: (-(b.y - a.y) / length) * by, y: ((b.x - a.x) / length) * by };
  });
  return points.map((point, index) => {
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

const drawLine = line<Point>(
  ({ x }) => x,
  ({ y }) => y
).digits(1);

/** SVG path data of a line, to a tenth of a pixel. */
export const pathOf = (points: Polyline): string => drawLine(points) ?? '';
