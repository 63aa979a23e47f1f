import { describe, expect, test } from 'vitest';
import { diagramLayout } from '../../src/lib/draw/diagram';
import { panelLayout } from '../../src/lib/draw/panel';
import { planLayout } from '../../src/lib/draw/plan';
import { rowsLayout } from '../../src/lib/draw/rows';
import { holes, read, type YardInput } from '../../src/lib/yard';
import { moment } from '../yard/build';

const all = (['west', 'east', 'both', 'two west', 'two east'] as const).flatMap((runningEnds) =>
  ([2, 5] as const).flatMap((deckRoads) =>
    [334, 645].map((width) => ({ runningEnds, deckRoads, width }))
  )
);

const drawn = ({ width, ...ends }: (typeof all)[number], more: YardInput = {}) => {
  const stablingRoads = ends.deckRoads - 1;
  const { yard, scene } = moment({ ...ends, stablingRoads, runningRoad: 'interlocked', ...more });
  return { yard, scene, width, runs: read(yard, scene).runs };
};

interface Spot {
  readonly x: number;
  readonly y: number;
}
const apart = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y);
const pairs = <T>(list: readonly T[]) =>
  list.flatMap((a, index) => list.slice(index + 1).map((b) => [a, b] as const));

describe.each(all)('$runningEnds, $deckRoads deck roads, in $width px', (given) => {
  test('plan: every road lies inside it; letters of one end stand clear of each other', () => {
    const { yard, width } = drawn(given);
    for (const { deckMm } of holes(yard)) {
      const { roads, deck, height, well } = planLayout(yard, deckMm, width);
      for (const { west, east, y } of roads) {
        expect(west).toBeGreaterThanOrEqual(0);
        expect(west).toBeLessThan(east);
        expect(east).toBeLessThanOrEqual(width);
        expect(y).toBeGreaterThan(0);
        expect(y).toBeLessThan(height);
      }
      expect(deck.y).toBeGreaterThanOrEqual(well.y);
      expect(deck.y + deck.height).toBeLessThanOrEqual(well.y + well.height + 1e-9);
      const ends = roads.filter(({ west, east }) => east <= deck.x || west >= deck.x + deck.width);
      const letters = ends.map(({ letterXs: [x = 0], y }) => ({ x, y }));
      for (const [a, b] of pairs(letters)) expect(apart(a, b)).toBeGreaterThan(19);
    }
  });

  test.each(['chain', 'ring', 'star'] as const)(
    'rows and circuit diagram with a %s: every part in its place inside the drawing',
    (home) => {
      const { yard, scene, runs, width } = drawn(given, { return: home });
      const ids = runs.flatMap((run) => run.parts.map(({ id }) => id));
      const rows = rowsLayout(yard, runs, {
        width,
        drawn: { mirrored: false, order: [] } as never
      });
      const diagram = diagramLayout(yard, runs, { scene, width });
      for (const { anchors, width: wide, height } of [rows, diagram]) {
        for (const id of ids) {
          const at = anchors.get(id);
          expect(at?.x, id).toBeGreaterThan(0);
          expect(at?.x, id).toBeLessThan(wide);
          expect(at?.y, id).toBeGreaterThan(0);
          expect(at?.y, id).toBeLessThan(height);
        }
      }
      const lines = rows.runs.flatMap(({ stretches }) => stretches.flatMap(({ line }) => line));
      expect(Math.max(...lines.map(({ x }) => x))).toBeLessThan(rows.width - 3);
    }
  );

  test('panel: painted roads run north to south, their letters clear of each other', () => {
    const { yard, width } = drawn(given);
    const { roads, height } = panelLayout(yard, width);
    const letters = roads.map(({ letterX: x, y }) => ({ x, y }));
    for (const [a, b] of pairs(letters)) expect(apart(a, b)).toBeGreaterThan(14);
    for (const { y } of letters) {
      expect(y).toBeGreaterThan(24);
      expect(y).toBeLessThan(height);
    }
    const line = (name: string) => roads.find(({ road }) => road === name)?.y ?? NaN;
    if (given.runningEnds.startsWith('two')) expect(line('QQ')).toBeLessThan(line('Q'));
  });
});
