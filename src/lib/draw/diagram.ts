import { isProbe, roadsOf, type Run, type Scene, type Yard } from '../yard';
import { acrossLine, isMetal, nodePoints } from './across';
import { isCross } from './frame';
import type { Point, Polyline } from './geometry';
import { layHeld, type Held } from './held';
import { layRun, roomFor, type Anchor, type LaidRun } from './run';

/** Where the supply stands, and the least way from it to the first column, px. */
const SUPPLY_X = 44;
const FIRST = 100;
/** Width of a column: at least, and at most; a joint of the return takes less. */
const COLUMN = 96;
const WIDEST = 180;
const JOINT = 44;
/** Between two levels of wires that pass each other, px. */
export const LANE = 20;
/** Height of the feed line without wires above it, and of the motor between its rails. */
const TOP = 34;
const MOTOR = 64;
/** Least height of a column above the feed rail and under the return rail. */
const ABOVE = 70;
const BELOW = 44;
/** From a column to a wire beside it that comes from the other leg, and to a part laid across. */
const ASIDE = 28;
const ACROSS = 34;

/** One road's current path. */
export interface Path {
  readonly road: string;
  readonly x: number;
  /** Heights of its two rails. */
  readonly feed: number;
  readonly return: number;
  readonly loco?: string | undefined;
}

/** All that the circuit diagram draws, in px. */
export interface DiagramLayout {
  readonly width: number;
  readonly height: number;
  /** The supply's middle, and the heights of the two lines. */
  readonly supply: Point & { readonly feed: number; readonly return: number };
  /** Every controller, with its middle line. */
  readonly supplies: readonly { readonly place: string; readonly x: number }[];
  readonly paths: readonly Path[];
  readonly runs: readonly (LaidRun & { readonly run: Run })[];
  readonly held: readonly Held[];
  readonly joints: readonly Point[];
  readonly anchors: ReadonlyMap<string, Anchor>;
}

const isAcross = (run: Run): boolean => isMetal(run) || isProbe(run.id);
const roadOf = (node: string): string => node.split(' ').at(-1) as string;

/** Middle lines of roads and return joints, from the supply on. */
function places(yard: Yard, runs: readonly Run[], width: number): ReadonlyMap<string, number> {
  const roads = roadsOf(yard);
  const has = (node: string) => runs.some(({ from, to }) => from === node || to === node);
  const joints = ['return joint', 'deck joint'].filter(has);
  const second = has('feed 2') ? COLUMN : 0;
  const room = width - SUPPLY_X - FIRST - second - JOINT * joints.length;
  const column = Math.min(Math.max(room / roads.length, COLUMN), WIDEST);
  const deck = roads.find(({ bed }) => bed === 'deck')?.name;
  let x = SUPPLY_X + FIRST;
  const found = new Map<string, number>();
  const put = (name: string, step: number) => {
    found.set(name, x);
    x += step;
  };
  if (second > 0) put('feed 2', second);
  if (joints.includes('return joint')) put('return joint', JOINT);
  for (const { name } of roads) {
    if (name === deck && joints.includes('deck joint')) put('deck joint', JOINT);
    put(name, column);
  }
  return found;
}

/** The nodes of a leg, with the supply's terminal in front. */
const alongOf = (node: string, at: ReadonlyMap<string, number>): number | undefined => {
  if (node === 'feed' || node === 'return') return SUPPLY_X;
  if (node === 'feed 2' || node.endsWith(' joint')) return at.get(node);
  return / tag /.test(node) ? at.get(roadOf(node)) : undefined;
};

/** A wire of a leg: from where to where, and on which level: 0 is the line itself. */
interface LegWire {
  readonly run: Run;
  readonly from: number;
  readonly to: number;
  readonly level: number;
}

/** Wires between neighbours make the line; each other one passes on the next free level. */
function legWires(runs: readonly Run[], at: ReadonlyMap<string, number>): readonly LegWire[] {
  const all = runs
    .filter((run) => run.road === undefined && !isAcross(run))
    .flatMap((run) => {
      const [from, to] = [alongOf(run.from, at), alongOf(run.to, at)];
      return from === undefined || to === undefined ? [] : [{ run, from, to }];
    });
  const laid: LegWire[] = [];
  const size = (wire: { from: number; to: number }) => Math.abs(wire.to - wire.from);
  for (const wire of [...all].sort((a, b) => size(a) - size(b))) {
    const [low, high] = [Math.min(wire.from, wire.to), Math.max(wire.from, wire.to)];
    const same = laid.filter((other) => other.run.job === wire.run.job);
    const under = same.filter(
      (other) => Math.min(other.from, other.to) < high && Math.max(other.from, other.to) > low
    );
    const passes = [...at].some(
      ([name, x]) => x > low && x < high && joins(all, wire.run.job, name)
    );
    const level =
      under.length === 0 && !passes ? 0 : Math.max(0, ...under.map((other) => other.level)) + 1;
    laid.push({ ...wire, level });
  }
  return laid;
}

/** Whether a wire of the leg ends at this road or joint. */
const joins = (all: readonly { readonly run: Run }[], job: Run['job'], name: string): boolean =>
  all.some(
    ({ run }) =>
      run.job === job &&
      [run.from, run.to].some((node) => node === name || node === `${job} tag ${name}`)
  );

/** Lays out the circuit diagram of a wiring: the supply in front, the lines above and below, a current path for each road. */
export function diagramLayout(
  yard: Yard,
  all: readonly Run[],
  {
    scene,
    width: room,
    lane = LANE
  }: {
    readonly scene: Scene;
    readonly width: number;
    /** Between two levels of wires that pass each other. */
    readonly lane?: number;
  }
): DiagramLayout {
  const runs = all.filter(({ job }) => job !== 'lamp');
  const at = places(yard, runs, room);
  const legs = legWires(runs, at);
  const levels = (job: Run['job']) =>
    Math.max(0, ...legs.filter(({ run }) => run.job === job).map(({ level }) => level));
  const need = (job: Run['job'], least: number) =>
    Math.max(
      least,
      ...runs.filter((run) => run.road && run.job === job).map((run) => roomFor(run))
    );
  const feed = TOP + lane * levels('feed');
  const feedRail = feed + need('feed', ABOVE);
  const returnRail = feedRail + MOTOR;
  const low = returnRail + need('return', BELOW);
  const paths = roadsOf(yard).map(({ name }): Path => {
    const loco = Object.entries(scene.locos).find(
      ([, { road, fallen }]) => road === name && !fallen
    )?.[0];
    return { road: name, x: at.get(name) as number, feed: feedRail, return: returnRail, loco };
  });
  const lines = { feed, return: low, lamp: low };
  const laid = [
    ...legs.map((wire) => ({ run: wire.run, ...layRun(wire.run, legLine(wire, lines, lane)) })),
    ...runs
      .filter((run) => run.road && !isAcross(run))
      .map((run) => ({ run, ...layRun(run, pathLine(run, paths, lines)) }))
  ];
  const nodes = new Map([
    ...nodePoints(laid),
    ...paths.flatMap(({ road, x, ...rails }): [string, Point][] => [
      [`feed rail ${road}`, { x, y: rails.feed }],
      [`return rail ${road}`, { x, y: rails.return }]
    ])
  ]);
  const held = runs
    .filter(({ id }) => isProbe(id))
    .map((run) => layHeld(run, acrossLine(run, nodes, ACROSS)));
  const across = runs
    .filter((run) => isAcross(run) && !isProbe(run.id))
    .map((run) => ({ run, ...layRun(run, acrossLine(run, nodes, ACROSS)) }));
  const width = Math.max(...at.values()) + 100;
  const supply = { x: SUPPLY_X, y: (feed + low) / 2, feed, return: low };
  const second = at.get('feed 2');
  const supplies = [
    { place: 'controller', x: SUPPLY_X },
    ...(second === undefined ? [] : [{ place: 'controller 2', x: second }])
  ];
  return {
    width,
    height: low + lane * levels('return') + 40,
    supply,
    supplies,
    paths,
    runs: [...laid, ...across],
    held,
    joints: [...jointsOf(laid), ...(second === undefined ? [] : [{ x: second, y: low }])],
    anchors: new Map<string, Anchor>([
      ...[...laid, ...across].flatMap(({ anchors }) => [...anchors]),
      ...held.map((each): [string, Anchor] => [each.id, each]),
      ...paths.flatMap(({ loco, x }): [string, Anchor][] =>
        loco ? [[loco, { x, y: (feedRail + returnRail) / 2, angle: 90 }]] : []
      ),
      ...supplies.map(({ place, x }): [string, Anchor] => [place, { x, y: supply.y, angle: 90 }])
    ])
  };
}

type Lines = Readonly<Record<Run['job'], number>>;

function legLine({ run, from, to, level }: LegWire, lines: Lines, lane: number): Polyline {
  const y = lines[run.job];
  const far = y + (run.job === 'feed' ? -1 : 1) * lane * level;
  return [
    { x: from, y },
    ...(level === 0
      ? []
      : [
          { x: from, y: far },
          { x: to, y: far }
        ]),
    { x: to, y }
  ];
}

/** Down from the feed line to the feed rail, or from the return rail to the return line; a moved dropper comes round from the other line. */
function pathLine(run: Run, paths: readonly Path[], lines: Lines): Polyline {
  const path = paths.find(({ road }) => road === run.road) as Path;
  const { x } = path;
  if (run.job === 'feed') {
    const rail = { x, y: path.feed };
    if (!isCross(run)) return [{ x, y: lines.feed }, rail];
    const top = lines.feed + 16;
    return [{ x: x - ASIDE, y: lines.return }, { x: x - ASIDE, y: top }, { x, y: top }, rail];
  }
  const rail = { x, y: path.return };
  if (!isCross(run)) return [rail, { x, y: lines.return }];
  const low = lines.return - 16;
  return [rail, { x, y: low }, { x: x + ASIDE, y: low }, { x: x + ASIDE, y: lines.feed }];
}

/** Ends at which three wires or more meet. */
function jointsOf(laid: readonly LaidRun[]): readonly Point[] {
  const ends = laid.flatMap(({ stretches }) => {
    const [first, last] = [stretches[0]?.line[0], stretches.at(-1)?.line.at(-1)];
    return [first, last].filter((point) => point !== undefined);
  });
  const same = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y) < 1;
  return ends.filter(
    (point, index) =>
      ends.findIndex((other) => same(point, other)) === index &&
      ends.filter((other) => same(point, other)).length > 2
  );
}
