import type { Run } from '../yard';
import type { Point, Polyline } from './geometry';
import type { LaidRun } from './run';

/** Whether a run is metal laid where none belongs, by hand or by a fault. */
export const isMetal = ({ parts }: Run): boolean => parts.every(({ kind }) => kind === 'metal');

/** Where nodes stand: both ends of every run, and of every symbol. */
export function nodePoints(
  laid: readonly (LaidRun & { readonly run: Run })[]
): ReadonlyMap<string, Point> {
  const ends = laid.flatMap(({ glyphs }) =>
    glyphs.flatMap(({ from, to, middle, angle, width }): [string, Point][] => {
      const turn = (angle * Math.PI) / 180;
      const [dx, dy] = [Math.cos(turn) * (width / 2 + 5), Math.sin(turn) * (width / 2 + 5)];
      return [
        [from, { x: middle.x - dx, y: middle.y - dy }],
        [to, { x: middle.x + dx, y: middle.y + dy }]
      ];
    })
  );
  const legs = laid.flatMap(({ run, stretches }): [string, Point][] => [
    [run.from, stretches[0]?.line[0] as Point],
    [run.to, stretches.at(-1)?.line.at(-1) as Point]
  ]);
  return new Map([...ends, ...legs]);
}

/** The line of a run between two nodes that stand somewhere: round one side of what it lies across, `aside` px from it. */
export function acrossLine(
  { from, to }: Run,
  nodes: ReadonlyMap<string, Point>,
  aside: number
): Polyline {
  const [a, b] = [from, to].map((node) => nodes.get(node)) as [Point?, Point?];
  if (!a || !b)
    return [
      { x: 0, y: 0 },
      { x: 0, y: 1 }
    ];
  if (a.y === b.y) return [a, { x: a.x, y: a.y + aside }, { x: b.x, y: b.y + aside }, b];
  const x = Math.max(a.x, b.x) + aside;
  return [a, { x, y: a.y }, { x, y: b.y }, b];
}
