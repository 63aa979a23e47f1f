import { roads, type Run, type Scene, type Yard } from '../yard';
import { scaleLinear } from 'd3';
import type { Point, Polyline } from './geometry';
import { layRun, roomFor, type Anchor, type LaidRun } from './run';

/** One row: where its rails lie. */
export interface Row {
  readonly road: string;
  readonly feedRail: { readonly y: number };
  readonly returnRail: { readonly y: number };
  /** Where the road's letter stands, and whether its toggle is told beside it. */
  readonly label: Point & { readonly toggled: boolean };
}

/** All that the rows view draws, in px. */
export interface RowsLayout {
  readonly width: number;
  readonly height: number;
  readonly controller: Point & { readonly width: number; readonly height: number };
  readonly rails: { readonly west: number; readonly east: number };
  readonly rows: readonly Row[];
  readonly runs: readonly (LaidRun & { readonly run: Run })[];
  /** Where the two legs stand upright. */
  readonly buses: { readonly feed: number; readonly return: number };
  /** Joints of three wires. */
  readonly joints: readonly Point[];
  /** Middle of every place that can be pointed at. */
  readonly anchors: ReadonlyMap<string, Anchor>;
  /** Where x = mm along a road. */
  readonly x: (mm: number) => number;
}

const TOP = 34;
const HALF_GAUGE = 8;
/** Room above the first row for its loco's name, and from row to row. */
const FIRST = 122;
const STEP = 92;

/** Wide enough for words beside the drawing. */
export const isWide = (width: number): boolean => width >= 560;

const isCross = (run: Run): boolean =>
  run.road !== undefined &&
  (run.job === 'feed' ? run.from.startsWith('return') : run.to.startsWith('feed'));

/** Lays out the rows of a wiring in `width` px. */
export function rowsLayout(yard: Yard, runs: readonly Run[], width: number): RowsLayout {
  const names = roads(yard);
  const ring = runs.some((run) => run.id === 'closing link');
  const margin = isWide(width) ? 34 : 26;
  const buses = { feed: margin, return: width - margin - (ring ? 22 : 0) };
  const need = (job: Run['job']) =>
    Math.max(
      ...runs.filter((run) => run.road && run.job === job && !isCross(run)).map(roomFor),
      48
    );
  const rails = { west: buses.feed + need('feed') + 20, east: buses.return - need('return') - 16 };
  const rowY = (road: string) => FIRST + names.indexOf(road) * STEP;
  const box = { width: isWide(width) ? 200 : 176, height: 48 };
  const controller = { ...box, x: (width - box.width) / 2, y: TOP - box.height / 2 };
  const frame = { names, buses, rails, rowY, controller, width, ring };
  const laid = runs
    .filter((run) => !run.id.startsWith('metal '))
    .map((run) => ({ run, ...layRun(run, lineOf(run, frame)) }));
  const found = new Map<string, Anchor>(laid.flatMap((each) => [...each.anchors]));
  const metal = runs
    .filter((run) => run.id.startsWith('metal '))
    .map((run) => ({ run, ...layMetal(run, laid) }));
  const anchors = new Map<string, Anchor>([
    ...found,
    ...metal.flatMap((each) => [...each.anchors]),
    ['controller', { x: width / 2, y: TOP, angle: 0 }]
  ]);
  return {
    width,
    height: rowY(names.at(-1) as string) + 50,
    controller,
    rails,
    rows: names.map((road) => row(runs, road, rowY(road), [buses.feed, rails.west])),
    runs: [...laid, ...metal],
    buses,
    joints: joints(names, buses, rowY, ring),
    anchors,
    x: scaleLinear([0, yard.roadLengthMm], [rails.west, rails.east])
  };
}

/** The letter stands under the toggle, or above the rails' west end where there is none. */
function row(
  runs: readonly Run[],
  road: string,
  y: number,
  [bus, west]: readonly [number, number]
): Row {
  const [feed, home] = [y + HALF_GAUGE, y - HALF_GAUGE];
  const toggled = runs.some(
    (run) => run.id === `feed ${road}` && isOwnToggle(run, `toggle ${road}`)
  );
  return {
    road,
    feedRail: { y: feed },
    returnRail: { y: home },
    label: toggled ? { toggled, x: bus + 16, y: feed + 36 } : { toggled, x: west + 2, y: feed + 25 }
  };
}

/** Every tag but the last joins three wires; in a ring the last return tag does too. */
const joints = (
  names: readonly string[],
  buses: RowsLayout['buses'],
  rowY: (road: string) => number,
  ring: boolean
): readonly Point[] =>
  names.flatMap((road, index) => {
    const last = index === names.length - 1;
    const y = rowY(road);
    return [
      ...(last ? [] : [{ x: buses.feed, y: y + HALF_GAUGE }]),
      ...(last && !ring ? [] : [{ x: buses.return, y: y - HALF_GAUGE }])
    ];
  });

interface Frame {
  readonly names: readonly string[];
  readonly buses: { readonly feed: number; readonly return: number };
  readonly rails: RowsLayout['rails'];
  readonly rowY: (road: string) => number;
  readonly controller: RowsLayout['controller'];
  readonly width: number;
  readonly ring: boolean;
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
    { x: buses.return, y: y - 2 * HALF_GAUGE },
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

function busLine(run: Run, { names, buses, rowY, controller, width, ring }: Frame): Polyline {
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
        { x: buses.return, y: ring ? TOP + 10 : TOP },
        { x: east, y: ring ? TOP + 10 : TOP }
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
  const angle = glyph?.angle ?? 0;
  return {
    stretches: [],
    glyphs: [
      {
        id: part.id,
        kind: 'metal',
        closed: true,
        middle,
        angle,
        ohms: part.ohms,
        width: glyph?.width ?? 40,
        from: run.from,
        to: run.to
      }
    ],
    anchors: new Map([[part.id, { ...middle, angle }]])
  };
}

/** Whether the toggle sits where it belongs: in its own road's feed. */
export const isOwnToggle = (run: Run, id: string): boolean =>
  run.job === 'feed' && `toggle ${run.road}` === id && run.parts.some((part) => part.id === id);

/** The loco that stands on a road, if any. */
export const locoOn = (scene: Scene, road: string): string | undefined =>
  Object.entries(scene.locos).find(([, standing]) => standing.road === road)?.[0];
