import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { panel } from '../../src/lib/book/panel';
import { panelFace, type Hole } from '../../src/lib/book/panelFace';
import { bookDrawings } from '../../src/lib/draw/bookDrawings';
import { svgOf } from '../../src/lib/draw/drawing';
import { lampRoads, switchedRoads, wire, type Yard } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { yardOf } from '../yard/build';

const clear = (a: Hole, b: Hole): boolean =>
  Math.abs(a.x - b.x) > (a.bodyMm.width + b.bodyMm.width) / 2 ||
  Math.abs(a.y - b.y) > (a.bodyMm.height + b.bodyMm.height) / 2;

const crowded = (holes: readonly Hole[]): readonly string[] =>
  holes.flatMap((a, index) =>
    holes.slice(index + 1).flatMap((b) => (clear(a, b) ? [] : [`${a.place}, ${b.place}`]))
  );

/** Every yard of 1–40 + 0–20 that can be built, with every kind of switch and lamp. */
const anyPanelYard: fc.Arbitrary<Yard> = fc
  .record({
    deckRoads: fc.integer({ min: 1, max: 40 }),
    stablingRoads: fc.integer({ min: 0, max: 20 }),
    runningRoad: fc.constantFrom('none' as const, 'direct' as const, 'interlocked' as const),
    runningEnds: fc.constantFrom('west', 'both', 'east', 'two west', 'two east'),
    switching: fc.constantFrom('toggles', 'rotary', 'pushes', 'none'),
    lamps: fc.constantFrom('none' as const, 'own' as const, 'track' as const)
  })
  .map(({ switching, lamps, ...input }) => {
    // A rotary has eleven roads at most: the release road and the running roads count.
    const deckRoads = switching === 'rotary' ? 1 + (input.deckRoads % 6) : input.deckRoads;
    const most = switching === 'rotary' ? 8 - deckRoads : 20;
    const stablingRoads = Math.min(input.stablingRoads, deckRoads, most);
    const lit = switching === 'toggles' || switching === 'rotary' ? lamps : 'none';
    return yardOf({ ...input, deckRoads, stablingRoads, switching, lamps: lit });
  });

describe('panelFace(yard)', () => {
  test('for any yard: each switch and lamp has one hole, and no body stands in another’s room or out of the panel', () => {
    fc.assert(
      fc.property(anyPanelYard, (yard) => {
        const { width, height, holes, roads } = panelFace(yard);
        expect(crowded(holes)).toEqual([]);
        for (const { x, y, bodyMm } of holes) {
          expect(x - bodyMm.width / 2).toBeGreaterThanOrEqual(3);
          expect(x + bodyMm.width / 2).toBeLessThanOrEqual(width - 3);
          expect(y + bodyMm.height / 2).toBeLessThanOrEqual(height - 3);
        }
        const made = wire(yard)
          .flatMap((run) => run.parts)
          .filter(({ kind }) => ['toggle', 'push', 'lamp'].includes(kind));
        const drilled = holes.filter(({ kind }) => !['screw', 'rotary'].includes(kind));
        expect(drilled.map(({ place }) => place).sort()).toEqual(made.map(({ id }) => id).sort());
        const low = Math.max(...roads.map((road) => road.y));
        expect(drilled.filter(({ y, bodyMm }) => y - bodyMm.height / 2 < low)).toEqual([]);
      }),
      { numRuns: 60, seed: 7 }
    );
  });

  // Source: common practice, toggles 20 to 25 mm from middle to middle.
  test('toggles of a usual yard stand 22 mm apart, ten of them in a line', () => {
    const { holes, width } = panelFace(yardOf({ deckRoads: 5, stablingRoads: 4 }));
    const xs = holes.filter(({ kind }) => kind === 'toggle').map(({ x }) => x);
    expect(xs).toEqual(xs.map((_, index) => (xs[0] as number) + 22 * index));
    expect(xs).toHaveLength(10);
    expect(width).toBe(270);
  });

  test('a rotary has one hole, and a lamp for each of its roads around it', () => {
    const yard = yardOf({ deckRoads: 4, stablingRoads: 3, switching: 'rotary', lamps: 'own' });
    const { holes } = panelFace(yard);
    const [rotary, ...others] = holes.filter(({ kind }) => kind !== 'screw');
    expect(rotary?.kind).toBe('rotary');
    expect(others.map(({ place }) => place)).toEqual(lampRoads(yard).map((road) => `lamp ${road}`));
    expect(switchedRoads(yard)).toHaveLength(others.length);
  });
});

/** Circles of an SVG that stand for a hole. */
const circles = (svg: string) =>
  [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)" data-place="([^"]+)"/g)].map(
    ([, x, y, r, place]) => ({ place, x: Number(x), y: Number(y), r: Number(r) })
  );

describe.each([
  { deckRoads: 5, stablingRoads: 4, lamps: 'own' },
  { deckRoads: 24, stablingRoads: 12 },
  { deckRoads: 40, stablingRoads: 20, switching: 'pushes' },
  { deckRoads: 5, stablingRoads: 3, switching: 'rotary', lamps: 'track' }
] as const)('the panel of %j', (input) => {
  const yard = yardOf(input);
  const drawings = bookDrawings('panel', yard);
  const rows = panel.make(yard).tables[0]?.rows ?? [];
  const { width, height } = panelFace(yard);

  test('one unit of the SVG is a millimetre, and its holes are those of the table, mm and inch', () => {
    const svg = svgOf(drawings[0]?.whole as (typeof drawings)[0]['whole']);
    expect(svg).toContain(
      `width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`
    );
    const drawn = circles(svg);
    expect(drawn).toHaveLength(rows.length);
    for (const [index, [, place, drill, drillIn, x, xIn, y, yIn]] of rows.entries()) {
      const hole = drawn[index];
      expect(hole?.place).toBe(place);
      expect([2 * (hole?.r ?? 0), hole?.x, hole?.y]).toEqual([drill, x, y]);
      // Source: 1 in = 25.4 mm, exactly (international yard and pound agreement, 1959).
      for (const [mm, inch] of [
        [drill, drillIn],
        [x, xIn],
        [y, yIn]
      ]) {
        near(Number(inch) * 25.4, Number(mm), { abs: 0.0005 * 25.4 });
      }
    }
  });

  test('the back is its mirror, hole by hole', () => {
    const [front, back] = drawings.map(({ whole }) => circles(svgOf(whole)));
    expect(back).toEqual(
      front?.map(({ x, ...hole }) => ({ ...hole, x: Number((width - x).toFixed(1)) }))
    );
  });

  test('every hole is whole on one of its sheets, and every sheet has room on A4 and on Letter', () => {
    const windows = drawings.flatMap(({ pages }) =>
      pages.flatMap(({ shapes }) => shapes.filter((shape) => shape.kind === 'window'))
    );
    const half = windows.slice(0, windows.length / 2);
    const split = panelFace(yard).holes.filter(
      ({ x, y, holeMm }) =>
        !half.some(
          (window) =>
            x - holeMm / 2 >= window.from.x &&
            x + holeMm / 2 <= window.from.x + window.width &&
            y - holeMm / 2 >= window.from.y &&
            y + holeMm / 2 <= window.from.y + window.height
        )
    );
    expect(split.map(({ place }) => place)).toEqual([]);
    for (const page of drawings.flatMap(({ pages }) => pages)) {
      // Source: ISO 216, A4 210 × 297 mm; Letter 8.5 × 11 in; margins of 12 mm.
      expect(page.width).toBeLessThanOrEqual(210 - 24);
      expect(page.height).toBeLessThanOrEqual(11 * 25.4 - 24);
    }
  });
});
