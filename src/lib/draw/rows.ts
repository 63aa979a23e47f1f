import type { Redrawn } from '../lesson';
import { roadNamed, type Run, type Scene, type Yard } from '../yard';
import { frameOf, TOP, HALF_GAUGE, type Frame } from './frame';
import type { Point, Polyline } from './geometry';
import { lineOf, nodePoint } from './lines';
import { layProbes, PROBE_ROOM, type LaidProbe } from './probes';
import { layRun, type Anchor, type LaidRun } from './run';

/** One row: where its rails lie. */
export interface Row {
  readonly road: string;
  readonly feedRail: { readonly y: number };
  readonly returnRail: { readonly y: number };
  /** Where the road's letter stands, and whether its toggle is told beside it. */
  readonly label: Point & { readonly toggled: boolean; readonly anchor: 'start' | 'end' };
}

/** All that the rows view draws, in px. */
export interface RowsLayout {
  /** Whether the feed comes down in the east. */
  readonly mirrored: boolean;
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
  /** Test instruments, under the rows. */
  readonly probes: readonly LaidProbe[];
  /** Middle of every place that can be pointed at. */
  readonly anchors: ReadonlyMap<string, Anchor>;
  /** Where a place on a road is drawn. */
  readonly x: (road: string, mm: number) => number;
}

/** How wide the rows are drawn, and how where not as usual. */
interface Space {
  readonly width: number;
  readonly drawn: Redrawn;
}

/** Lays out the rows of a wiring in `width` px. */
export function rowsLayout(yard: Yard, all: readonly Run[], space: Space): RowsLayout {
  const { width, drawn } = space;
  const runs = all.filter(({ held }) => !held);
  const plain = frameOf(yard, runs, space);
  const turned = (points: Polyline): Polyline =>
    drawn.mirrored ? points.map(({ x, y }) => ({ x: width - x, y })) : points;
  const frame = drawn.mirrored ? mirror(plain) : plain;
  const { rails, buses, controller, roads } = frame;
  const laid = runs
    .filter((run) => !run.id.startsWith('metal '))
    .map((run) => ({ run, ...layRun(run, turned(lineOf(run, plain)), beforeParts(run, plain)) }));
  const metal = runs
    .filter((run) => run.id.startsWith('metal '))
    .map((run) => ({ run, ...layMetal(run, laid, frame) }));
  const rows = roads.map(({ name }) => row(runs, name, frame));
  const foot = Math.max(...rows.map(({ feedRail }) => feedRail.y)) + 50;
  const probes = layProbes({ runs: all, laid, frame }, foot + 30);
  return {
    mirrored: drawn.mirrored,
    width,
    height: foot + (probes.length > 0 ? PROBE_ROOM : 0),
    probes,
    controller,
    rails,
    rows,
    runs: [...laid, ...metal],
    buses,
    joints: turned(joints(runs, plain)),
    anchors: new Map<string, Anchor>([
      ...[...laid, ...metal].flatMap((each) => [...each.anchors]),
      ...probes.map(({ id, at }): [string, Anchor] => [id, { x: at.x, y: at.y + 4, angle: 0 }]),
      ['controller', { x: width / 2, y: TOP, angle: 0 }]
    ]),
    x: (road, mm) => rails.west + (mm / roadNamed(yard, road).lengthMm) * (rails.east - rails.west)
  };
}

/** A wire that passes a row has its parts between two rows. */
const beforeParts = (run: Run, { detours }: Frame): number | undefined =>
  detours.some(({ id }) => id === run.id) ? 0.2 : undefined;

/** The same frame with the feed in the east. */
function mirror(frame: Frame): Frame {
  const { width, rails, buses } = frame;
  return {
    ...frame,
    rails: { west: width - rails.east, east: width - rails.west },
    buses: { feed: width - buses.feed, return: width - buses.return, deck: width - buses.deck }
  };
}

/** The letter stands under the toggle, or below the rails' west end where there is none. */
function row(runs: readonly Run[], road: string, { rails, buses, rowY }: Frame): Row {
  const [feed, home] = [rowY(road) + HALF_GAUGE, rowY(road) - HALF_GAUGE];
  const toggled = runs.some(
    (run) => run.id === `feed ${road}` && isOwnToggle(run, `toggle ${road}`)
  );
  const inEast = buses.feed > buses.return;
  const label = toggled
    ? { x: buses.feed + (inEast ? -16 : 16), y: feed + 36, anchor: inEast ? 'end' : 'start' }
    : { x: rails.west + 2, y: feed + 25, anchor: 'start' };
  return {
    road,
    feedRail: { y: feed },
    returnRail: { y: home },
    label: { toggled, ...label } as Row['label']
  };
}

/** Points of the legs where three wires meet. */
function joints(runs: readonly Run[], frame: Frame): readonly Point[] {
  const ends = runs.flatMap((run) => [run.from, run.to]).filter((node) => !node.includes('rail'));
  const nodes = ends.filter((node, index) => ends.indexOf(node) === index);
  return nodes
    .filter((node) => node !== 'feed' && node !== 'return')
    .filter((node) => ends.filter((each) => each === node).length > 2)
    .map((node) => nodePoint(node, frame));
}

/** Metal lies on the part that it bridges. */
function layMetal(run: Run, laid: readonly LaidRun[], { rails, rowY }: Frame): LaidRun {
  const part = run.parts[0] as Run['parts'][number];
  const host = part.id.replace('metal on ', '');
  const glyph = laid.flatMap((each) => each.glyphs).find((each) => each.id === host);
  const [, road] = /^rails of (.+)$/.exec(host) ?? [];
  const onRails = road === undefined ? undefined : { x: rails.east - 46, y: rowY(road) };
  const middle = onRails ??
    glyph?.middle ??
    laid.map((each) => each.anchors.get(host)).find(Boolean) ?? { x: 0, y: 0 };
  const angle = onRails ? 90 : (glyph?.angle ?? 0);
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
