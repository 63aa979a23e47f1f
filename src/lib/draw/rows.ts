import { hasToggle, roads, type Run, type Scene, type Yard } from '../yard';
import type { Point, Polyline } from './geometry';
import { layRun, roomFor, type LaidRun } from './run';

/** One row: where its rails lie. */
export interface Row {
  readonly road: string;
  readonly feedRail: { readonly y: number };
  readonly returnRail: { readonly y: number };
  /** Where the road's letter stands. */
  readonly label: Point;
}

/** All that the rows view draws, in px. */
export interface RowsLayout {
  readonly width: number;
  readonly height: number;
  readonly controller: Point & { readonly width: number; readonly height: number };
  readonly rails: { readonly west: number; readonly east: number };
  readonly rows: readonly Row[];
  readonly runs: readonly (LaidRun & { readonly run: Run })[];
  /** Middle of every place that can be pointed at. */
  readonly anchors: ReadonlyMap<string, Point>;
  /** Where x = mm along a road. */
  readonly x: (mm: number) => number;
}

const TOP = 34;
const HALF_GAUGE = 8;
/** Room above the first row for its loco's name, and from row to row. */
const FIRST = 122;
const STEP = 92;

const isCross = (run: Run): boolean =>
  run.road !== undefined &&
  (run.job === 'feed' ? run.from.startsWith('return') : run.to.startsWith('feed'));

/** Lays out the rows of a wiring in `width` px. */
export function rowsLayout(yard: Yard, runs: readonly Run[], width: number): RowsLayout {
  const names = roads(yard);
  const ring = runs.some((run) => run.id === 'closing link');
  const margin = width < 560 ? 16 : 34;
  const buses = { feed: margin, return: width - margin - (ring ? 22 : 0) };
  const need = (job: Run['job']) =>
    Math.max(
      ...runs.filter((run) => run.road && run.job === job && !isCross(run)).map(roomFor),
      48
    );
  const rails = { west: buses.feed + need('feed') + 20, east: buses.return - need('return') - 16 };
  const rowY = (road: string) => FIRST + names.indexOf(road) * STEP;
  const box = { width: width < 560 ? 176 : 200, height: 48 };
  const controller = { ...box, x: (width - box.width) / 2, y: TOP - box.height / 2 };
  const frame = { names, buses, rails, rowY, controller, width };
  const laid = runs
    .filter((run) => !run.id.startsWith('metal '))
    .map((run) => ({ run, ...layRun(run, lineOf(run, frame)) }));
  const found = new Map<string, Point>(laid.flatMap((each) => [...each.anchors]));
  const metal = runs
    .filter((run) => run.id.startsWith('metal '))
    .map((run) => ({ run, ...layMetal(run, laid) }));
  const anchors = new Map<string, Point>([
    ...found,
    ...metal.flatMap((each) => [...each.anchors]),
    ['controller', { x: width / 2, y: TOP }]
  ]);
  const inset = 0;
  return {
    width,
    height: rowY(names.at(-1) as string) + 50,
    controller,
    rails,
    rows: names.map((road) => row(yard, road, rowY(road), buses.feed)),
    runs: [...laid, ...metal],
    anchors,
    x: (mm) => rails.west + inset + (mm / yard.roadLengthMm) * (rails.east - rails.west - 2 * inset)
  };
}

const row = (yard: Yard, road: string, y: number, bus: number): Row => ({
  road,
  feedRail: { y: y + HALF_GAUGE },
  returnRail: { y: y - HALF_GAUGE },
  label: { x: bus + (hasToggle(yard, road) ? 16 : 14), y: y + HALF_GAUGE + 24 }
});

interface Frame {
  readonly names: readonly string[];
  readonly buses: { readonly feed: number; readonly return: number };
  readonly rails: RowsLayout['rails'];
  readonly rowY: (road: string) => number;
  readonly controller: RowsLayout['controller'];
  readonly width: number;
}

/** The line along which a run is drawn. */
function lineOf(run: Run, frame: Frame): Polyline {
  if (run.road) return run.job === 'feed' ? feedLine(run, frame) : returnLine(run, frame);
  return busLine(run, frame);
}

function feedLine(run: Run, { buses, rails, rowY }: Frame): Polyline {
  const y = rowY(run.road as string) + HALF_GAUGE;
  if (!isCross(run))
    return [
      { x: buses.feed, y },
      { x: rails.west, y }
    ];
  const low = y + 26;
  return [
    { x: buses.return, y: low },
    { x: rails.east - 14, y: low },
    { x: rails.east - 14, y }
  ];
}

function returnLine(run: Run, { buses, rails, rowY }: Frame): Polyline {
  const y = rowY(run.road as string) - HALF_GAUGE;
  if (!isCross(run))
    return [
      { x: rails.east, y },
      { x: buses.return, y }
    ];
  const high = y - 30;
  return [
    { x: rails.west + 14, y },
    { x: rails.west + 14, y: high },
    { x: buses.feed, y: high }
  ];
}

function busLine(run: Run, { names, buses, rowY, controller, width }: Frame): Polyline {
  const first = names[0] as string;
  const y = (node: string) => rowY(node.split(' ').at(-1) as string);
  const [west, east] = [controller.x, controller.x + controller.width];
  switch (run.id) {
    case 'feed wire':
      return [
        { x: west, y: TOP },
        { x: buses.feed, y: TOP },
        { x: buses.feed, y: rowY(first) + HALF_GAUGE }
      ];
    case 'return wire':
      return [
        { x: buses.return, y: rowY(first) - HALF_GAUGE },
        { x: buses.return, y: TOP + 10 },
        { x: east, y: TOP + 10 }
      ];
    case 'closing link': {
      const low = rowY(names.at(-1) as string) + 30;
      return [
        { x: buses.return, y: low - 30 - HALF_GAUGE },
        { x: buses.return, y: low },
        { x: width - 12, y: low },
        { x: width - 12, y: TOP - 10 },
        { x: east, y: TOP - 10 }
      ];
    }
    default: {
      const [x, side] = run.job === 'feed' ? [buses.feed, 1] : [buses.return, -1];
      return [
        { x, y: y(run.from) + side * HALF_GAUGE },
        { x, y: y(run.to) + side * HALF_GAUGE }
      ];
    }
  }
}

/** Metal lies on the part that it bridges. */
function layMetal(run: Run, laid: readonly LaidRun[]): LaidRun {
  const part = run.parts[0] as Run['parts'][number];
  const host = part.id.replace('metal on ', '');
  const glyph = laid.flatMap((each) => each.glyphs).find((each) => each.id === host);
  const middle = glyph?.middle ??
    laid.map((each) => each.anchors.get(host)).find(Boolean) ?? { x: 0, y: 0 };
  return {
    stretches: [],
    glyphs: [
      {
        id: part.id,
        kind: 'metal',
        closed: true,
        middle,
        angle: glyph?.angle ?? 0,
        width: glyph?.width ?? 40,
        from: run.from,
        to: run.to
      }
    ],
    anchors: new Map([[part.id, middle]])
  };
}

/** The loco that stands on a road, if any. */
export const locoOn = (scene: Scene, road: string): string | undefined =>
  Object.entries(scene.locos).find(([, standing]) => standing.road === road)?.[0];
