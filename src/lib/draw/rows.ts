import type { Redrawn } from '../lesson';
import { roadNamed, vehicles, type Run, type Scene, type Standing, type Yard } from '../yard';
import { acrossLine, isMetal, nodePoints } from './across';
import { secondReturn } from './controllers';
import { frameOf, HALF_GAUGE, isCondensed, TOP, widthFor, type Frame } from './frame';
import type { Box, Point, Polyline } from './geometry';
import { lampPlaces, type LampPlace } from './lampRows';
import { lineOf, nodePoint } from './lines';
import { layProbes, PROBE_ROOM, type LaidProbe } from './probes';
import { layRun, type Anchor, type LaidRun } from './run';

/** Where words begin or end. */
type Place = Point & { readonly anchor: 'start' | 'end' };

/** One row: where its rails lie. */
export interface Row {
  readonly road: string;
  readonly feedRail: { readonly y: number };
  readonly returnRail: { readonly y: number };
  /** Where the road's letter stands, and whether its switch is told beside it. */
  readonly label: Place & { readonly toggled: boolean };
  /** Where the owner's name stands, if not behind the letter. */
  readonly title?: Place;
}

/** All that the rows view draws, in px. */
export interface RowsLayout {
  /** Whether the feed comes down in the east. */
  readonly mirrored: boolean;
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
  /** Where the upright leg of the feed stands. */
  readonly feedLeg: number;
  /** Where the letter of the return stands. */
  readonly returnLetter: Point;
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
export function rowsLayout(
  yard: Yard,
  all: readonly Run[],
  { drawn, ...space }: Space
): RowsLayout {
  const width = widthFor(yard, space.width);
  const runs = all.filter(({ job, held }) => job !== 'lamp' && !held);
  const plain = frameOf(yard, runs, { width, drawn });
  const turned = (points: Polyline): Polyline =>
    drawn.mirrored ? points.map(({ x, y }) => ({ x: width - x, y })) : points;
  const frame = drawn.mirrored ? mirror(plain) : plain;
  const { rails, controller, second, roads } = frame;
  const laid = runs
    .filter((run) => !isMetal(run))
    .map((run) => ({
      run,
      ...layRun(run, turned(lineOf(run, plain)), {
        pitch: frame.pitch,
        before: beforeParts(run, plain)
      })
    }));
  const nodes = new Map([...nodePoints(laid), ...railPoints(frame)]);
  const metal = runs
    .filter(isMetal)
    .map((run) => ({ run, ...(layTool(run, laid, frame) ?? layStrap(run, nodes)) }));
  const rows = roads.map(({ name }) => row(laid, name, frame));
  const glyphs = [...laid, ...metal].flatMap((each) => each.glyphs);
  const names = roads.map(({ name }) => name);
  const lamps = lampPlaces(yard, names, glyphs);
  const controllers = [controller, ...(second ? [second] : [])];
  const foot = Math.max(...rows.map(({ feedRail }) => feedRail.y)) + 44;
  const probes = layProbes({ runs: all, laid, frame }, foot + 30);
  return {
    mirrored: drawn.mirrored,
    width,
    height: foot + (probes.length > 0 ? PROBE_ROOM : 0),
    probes,
    controllers,
    secondReturn: second ? secondReturn(controller, second) : [],
    lamps,
    rails,
    rows,
    runs: [...laid, ...metal],
    feedLeg: frame.buses.feed2,
    returnLetter: returnLetter(runs, controller, drawn.mirrored),
    joints: [
      ...turned(joints(runs, plain)),
      ...turned(second ? secondReturn(controller, second).slice(-1) : [])
    ],
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
      ),
      ...probes.map(({ id, at }): [string, Anchor] => [id, { x: at.x, y: at.y + 4, angle: 0 }])
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
  const over = (x: number) => width - x;
  return {
    ...frame,
    rails: { west: over(rails.east), east: over(rails.west) },
    buses: {
      feed: over(buses.feed),
      feed2: over(buses.feed2),
      return: over(buses.return),
      deck: over(buses.deck)
    },
    feedX: (road) => over(frame.feedX(road))
  };
}

/** The letter stands under the switch, where it begins if a pin contact is before it, or below the rails' west end where there is none; of condensed rows beside the feed. */
function row(laid: RowsLayout['runs'], road: string, { rails, buses, roads, rowY }: Frame): Row {
  const [feed, home] = [rowY(road) + HALF_GAUGE, rowY(road) - HALF_GAUGE];
  const feeder = laid.find(({ run }) => run.id === `feed ${road}`);
  const own = feeder?.glyphs.find(({ id }) => isOwnSwitch(feeder.run, id));
  const pinned = feeder?.glyphs.some(({ kind }) => kind === 'pin contact');
  const inEast = buses.feed > buses.return;
  const [before, after] = inEast ? (['start', 'end'] as const) : (['end', 'start'] as const);
  const side = inEast ? -1 : 1;
  const inward = 16 * side;
  const condensed = isCondensed(roads.length);
  const label = condensed
    ? { x: buses.feed - inward / 2, y: feed + 5, anchor: before }
    : own
      ? {
          x: pinned ? own.middle.x - (own.width / 2) * side : buses.feed2 + inward,
          y: feed + 28,
          anchor: after
        }
      : { x: rails.west + 2, y: feed + 25, anchor: 'start' as const };
  return {
    road,
    feedRail: { y: feed },
    returnRail: { y: home },
    label: { toggled: own !== undefined, ...label },
    ...(condensed && { title: { x: buses.feed2 + inward, y: feed + 19, anchor: after } })
  };
}

/** The feed's letter stands above its leg, beside the controller's box. */
export const feedLetter = ({ x, y, width }: Box, mirrored: boolean): Point => ({
  x: mirrored ? x + width + 20 : x - 20,
  y: y + 13
});

/** The return's letter stands above its leg; it gives way to a ring's wire that goes round the outside to the controller. */
function returnLetter(runs: readonly Run[], { x, width }: Box, mirrored: boolean): Point {
  const round = runs.some(({ id, to }) => id === 'closing link' && to === 'return');
  const aside = round ? 36 : 20;
  return { x: mirrored ? x - aside : x + width + aside, y: TOP + (round ? 24 : -11) };
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

/** Where metal is laid on a rail of each road. */
const railPoints = ({ roads, rails, rowY }: Frame): readonly [string, Point][] =>
  roads.flatMap(({ name }): [string, Point][] => [
    [`feed rail ${name}`, { x: rails.east - 46, y: rowY(name) + HALF_GAUGE }],
    [`return rail ${name}`, { x: rails.east - 46, y: rowY(name) - HALF_GAUGE }]
  ]);

/** A tool lies on the part, or across the rails, that it bridges; undefined for metal that joins anything else. */
function layTool(run: Run, laid: readonly LaidRun[], { rails, rowY }: Frame): LaidRun | undefined {
  const part = run.parts[0] as Run['parts'][number];
  const host = part.id.replace('metal on ', '');
  const glyph = laid.flatMap((each) => each.glyphs).find((each) => each.id === host);
  const [road, other] = [run.from, run.to].map((node) => / rail (.+)$/.exec(node)?.[1]);
  const onRails =
    road !== undefined && road === other ? { x: rails.east - 46, y: rowY(road) } : undefined;
  const middle =
    onRails ?? glyph?.middle ?? laid.map((each) => each.anchors.get(host)).find(Boolean);
  if (!middle) return undefined;
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

/** From a part to a wire that leads past it, px: above the words under a switch. */
const PAST = 11;

/** Metal that joins two places is drawn as the wire that it is. */
const layStrap = (run: Run, nodes: ReadonlyMap<string, Point>): LaidRun => ({
  ...layRun(run, acrossLine(run, nodes, PAST)),
  glyphs: []
});

/** Whether the switch sits where it belongs: in its own road's feed. */
export const isOwnSwitch = (run: Run, id: string): boolean =>
  run.job === 'feed' &&
  ['toggle', 'selector', 'push'].some((kind) => `${kind} ${run.road}` === id) &&
  run.parts.some((part) => part.id === id);

/** Locos and other stock on a road, the locos first. */
export const vehiclesOn = (scene: Scene, road: string): readonly (readonly [string, Standing])[] =>
  Object.entries(vehicles(scene)).filter(([, standing]) => standing.road === road);

/** The loco that stands on a road, if any. */
export const locoOn = (scene: Scene, road: string): string | undefined =>
  Object.entries(scene.locos).find(([, standing]) => standing.road === road)?.[0];
