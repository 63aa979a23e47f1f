import type { Point, Polyline } from './geometry';

/** A conductor with the line along which it is drawn. */
interface Lined {
  readonly key: string;
  readonly line: Polyline;
}

/** A short piece of a conductor that passes over another one. */
export interface Over extends Lined {
  /** Key of the conductor. */
  readonly of: string;
}

/** How near to a corner or an end a crossing may lie, px: nearer, it is a joint. */
const CLEAR = 8;
/** Half the length of the piece that goes over, px. */
const HALF = 9;

type Leg = readonly [Point, Point];
const legs = (line: Polyline): readonly Leg[] =>
  line.slice(1).map((end, index) => [line[index] as Point, end]);
const isLevel = ([a, b]: Leg): boolean => a.y === b.y && a.x !== b.x;
const isUpright = ([a, b]: Leg): boolean => a.x === b.x && a.y !== b.y;
const inside = (at: number, a: number, b: number): boolean =>
  at > Math.min(a, b) + CLEAR && at < Math.max(a, b) - CLEAR;

/** Where a level piece of one line crosses an upright piece of another. */
const crossed = (level: Polyline, upright: Polyline): readonly Point[] =>
  legs(level)
    .filter(isLevel)
    .flatMap(([a, b]) =>
      legs(upright)
        .filter(isUpright)
        .filter(([c, d]) => inside(c.x, a.x, b.x) && inside(a.y, c.y, d.y))
        .map(([c]) => ({ x: c.x, y: a.y }))
    );

/** Short pieces of the level wires at each crossing: drawn last, they pass over the upright ones and are not joined. */
export const crossings = (conductors: readonly Lined[]): readonly Over[] =>
  conductors.flatMap((over) =>
    conductors
      .filter((under) => under !== over)
      .flatMap((under) => crossed(over.line, under.line))
      .map(({ x, y }, index) => ({
        of: over.key,
        key: `${over.key} over ${index}`,
        line: [
          { x: x - HALF, y },
          { x: x + HALF, y }
        ]
      }))
  );
