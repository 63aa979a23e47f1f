import { describe, expect, test } from 'vitest';
import { rowsTarget } from '../../src/lib/draw/pointing';
import { rowsLayout } from '../../src/lib/draw/rows';
import {
  act,
  admit,
  faultsOf,
  fit,
  holes,
  read,
  SceneSchema,
  YardSchema,
  type YardInput
} from '../../src/lib/yard';

const drawn = { mirrored: false, order: [] };

function laid(input: YardInput, width: number) {
  const yard = admit('yard', YardSchema, input);
  const scene = fit('scene', yard, admit('scene', SceneSchema, {}));
  return { yard, scene, layout: rowsLayout(yard, read(yard, scene).runs, { width, drawn }) };
}

const steps = ({ rows }: ReturnType<typeof laid>['layout']): readonly number[] =>
  rows.slice(1).map(({ feedRail }, index) => feedRail.y - (rows[index]?.feedRail.y ?? 0));

describe('rowsLayout(yard, runs, space)', () => {
  test('stands closer from 7 rows on, and is condensed from 13 on', () => {
    const stepOf = (deckRoads: number) => steps(laid({ deckRoads }, 640).layout)[0];
    expect([6, 7, 12, 13].map(stepOf)).toEqual([92, 76, 76, 42]);
  });

  test("gives a row more room only where its road has the owner's name", () => {
    const { layout } = laid({ deckRoads: 4, names: { B: 'Branch goods' } }, 640);
    expect(steps(layout)).toEqual([92, 114, 92]);
    const many = laid({ deckRoads: 14, names: { B: 'Branch goods' } }, 640).layout;
    expect(steps(many).slice(0, 3)).toEqual([42, 56, 42]);
    expect(many.rows[1]?.title?.y).toBeLessThan((many.rows[2]?.returnRail.y ?? 0) - 7);
  });

  test.each([
    [5, 4, 352, 'star'],
    [24, 12, 646, 'chain'],
    [24, 12, 352, 'ring'],
    [40, 20, 646, 'star'],
    [40, 20, 352, 'star']
  ] as const)('%i+%i in %i px, return as a %s: rails and wires in the drawing', (...given) => {
    const [deckRoads, stablingRoads, width, home] = given;
    const { layout, scene } = laid({ deckRoads, stablingRoads, return: home }, width);
    expect(layout.rails.east - layout.rails.west).toBeGreaterThan(80);
    const points = layout.runs.flatMap(({ stretches }) => stretches.flatMap(({ line }) => line));
    for (const { x, y } of points) {
      expect(x).toBeGreaterThan(20);
      expect(x).toBeLessThan(layout.width - 4);
      expect(y).toBeLessThan(layout.height);
    }
    for (const { road, feedRail, label } of layout.rows) {
      expect(label.x, 'room for a letter and a state').toBeGreaterThan(36);
      const x = layout.rails.east - 12;
      expect(rowsTarget(layout, scene, { x, y: feedRail.y - 8 })).toBe(`road ${road}`);
    }
  });
});

test('metal that a fault lays is drawn in its own roads’ rows, joined to what it joins', () => {
  const { yard, scene } = laid(
    { deckRoads: 3, stablingRoads: 2, cuts: [{ road: 'R', atMm: 400 }] },
    646
  );
  const kinds = ['bridge', 'touching', 'shorted', 'linkedPast', 'joined'];
  const tried = faultsOf(yard).filter((fault) => kinds.some((kind) => kind in fault));
  const astray = tried.flatMap((fault) => {
    const at = holes(yard).map(({ deckMm }) => ({ ...scene, deck: deckMm }));
    const faulty = at.map((each) => act(yard, each, { faults: [fault] }));
    const layout = rowsLayout(
      yard,
      faulty.map((each) => read(yard, each).runs).sort((a, b) => b.length - a.length)[0] ?? [],
      { width: 646, drawn }
    );
    const bands = layout.rows.map(({ road, returnRail, feedRail }) => ({
      road,
      top: returnRail.y - 20,
      low: feedRail.y + 30
    }));
    return layout.runs
      .filter(({ run }) => run.parts.every(({ kind }) => kind === 'metal'))
      .filter(({ run, stretches, glyphs }) => {
        const points = [
          ...stretches.flatMap(({ line }) => line),
          ...glyphs.map(({ middle }) => middle)
        ];
        const own = bands.filter(({ road }) =>
          [run.from, run.to, ...run.id.split(' ')].some((word) => word.split(' ').includes(road))
        );
        const [top, low] = [
          // The deck's return comes together above its first row.
          run.id.includes('plug return') ? 0 : Math.min(...own.map((band) => band.top)),
          Math.max(...own.map((band) => band.low))
        ];
        const isIn = ({ x, y }: { x: number; y: number }) =>
          x > 0 && x < layout.width && y > top && y < low;
        return points.length === 0 || !points.every(isIn);
      })
      .map(({ run }) => run.id);
  });
  expect(astray).toEqual([]);
  expect(tried.length).toBeGreaterThan(25);
});
