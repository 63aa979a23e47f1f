import { roadNamed, type Run, type Scene, type Yard } from '../yard';
import { secondReturn } from './controllers';
import { frameOf, HALF_GAUGE, type Box, type Frame } from './frame';
import type { Point, Polyline } from './geometry';
import { lampPlaces, type LampPlace } from './lampRows';
import { lineOf, nodePoint } from './lines';
import { layRun, type Anchor, type LaidRun } from './run';

/** One row: where its rails lie. */
export interface Row {
  readonly road: string;
  readonly feedRail: { readonly y: number };
  readonly returnRail: { readonly y: number };
  /** Where the road's letter stands, and whether its switch is told beside it. */
  readonly label: Point & { readonly toggled: boolean };
}

/** All that the rows view draws, in px. */
export interface RowsLayout {
  readonly width: number;
  readonly height: number;
  /** Boxes of the controllers, the first on top. */
  readonly controllers: readonly Box[];
  /** From the second controller's return terminal to the first one's; empty without one. */
  readonly secondReturn: Polyline;
  readonly lamps: readonly LampPlace[];
  readonly rails: { readonly west: number; readonly east: number };
  readonly rows: readonly Row[];
  readonly runs: readonly (LaidRun & { readonly run: Run })[];
  /** Where the two legs stand upright. */
  readonly buses: { readonly feed: number; readonly feed2: number; readonly return: number };
  /** Joints of three wires. */
  readonly joints: readonly Point[];
  /** Middle of every place that can be pointed at. */
  readonly anchors: ReadonlyMap<string, Anchor>;
  /** Where a place on a road is drawn. */
  readonly x: (road: string, mm: number) => number;
}

/** Lays out the rows of a wiring in `width` px. */
export function rowsLayout(yard: Yard, all: readonly Run[], width: number): RowsLayout {
  const runs = all.filter(({ job }) => job !== 'lamp');
  const frame = frameOf(yard, runs, width);
  const { rails, controller, second, roads } = frame;
  const laid = runs
    .filter((run) => !run.id.startsWith('metal '))
    .map((run) => ({ run, ...layRun(run, lineOf(run, frame)) }));
  const metal = runs
    .filter((run) => run.id.startsWith('metal '))
    .map((run) => ({ run, ...layMetal(run, laid, frame) }));
  const rows = roads.map(({ name }) => row(runs, name, frame));
  const glyphs = [...laid, ...metal].flatMap((each) => each.glyphs);
  const names = roads.map(({ name }) => name);
  const lamps = lampPlaces(yard, names, glyphs);
  const controllers = [controller, ...(second ? [second] : [])];
  return {
    width,
    height: (rows.at(-1)?.feedRail.y ?? 0) + 50,
    controllers,
    secondReturn: second ? secondReturn(controller, second) : [],
    lamps,
    rails,
    rows,
    runs: [...laid, ...metal],
    buses: frame.buses,
    joints: [...joints(runs, frame), ...(second ? secondReturn(controller, second).slice(-1) : [])],
    anchors: new Map<string, Anchor>([
      ...[...laid, ...metal].flatMap((each) => [...each.anchors]),
      ...controllers.map(({ x, y, ...box }, index): [string, Anchor] => [
        index === 0 ? 'controller' : 'controller 2',
        { x: x + box.width / 2, y: y + box.height / 2, angle: 0 }
      ]),
      ...lamps.flatMap(({ road, at }) =>
        all
          .filter(({ job, road: served }) => job === 'lamp' && served === road)
          .flatMap(({ parts }) =>
            parts.map(({ id }): [string, Anchor] => [id, { ...at, angle: 0 }])
          )
      )
    ]),
    x: (road, mm) => rails.west + (mm / roadNamed(yard, road).lengthMm) * (rails.east - rails.west)
  };
}

/** The letter stands under the switch, or above the rails' west end where there is none. */
function row(runs: readonly Run[], road: string, { rowY, buses, rails: { west } }: Frame): Row {
  const y = rowY(road);
  const bus = buses.feed2;
  const [feed, home] = [y + HALF_GAUGE, y - HALF_GAUGE];
  const toggled = runs.some(
    (run) => run.id === `feed ${road}` && run.parts.some(({ id }) => isOwnSwitch(run, id))
  );
  return {
    road,
    feedRail: { y: feed },
    returnRail: { y: home },
    label: toggled ? { toggled, x: bus + 16, y: feed + 36 } : { toggled, x: west + 2, y: feed + 25 }
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

/** Whether the switch sits where it belongs: in its own road's feed. */
export const isOwnSwitch = (run: Run, id: string): boolean =>
  run.job === 'feed' &&
  ['toggle', 'selector', 'push'].some((kind) => `${kind} ${run.road}` === id) &&
  run.parts.some((part) => part.id === id);

/** The loco that stands on a road, if any. */
export const locoOn = (scene: Scene, road: string): string | undefined =>
  Object.entries(scene.locos).find(([, standing]) => standing.road === road)?.[0];
