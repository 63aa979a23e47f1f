import type { Redrawn } from '../lesson';
import { roadsOf, type Road, type Run, type Yard } from '../yard';
import { detours, type Detour } from './detours';
import type { Point } from './geometry';
import { roomFor } from './run';

/** Height of the legs' top, and half the drawn gauge, px. */
export const TOP = 34;
export const HALF_GAUGE = 8;
/** Room above the first row, more where the plug's wires come together there; and from row to row. */
const FIRST = 122;
const FIRST_WITH_PLUG = 158;
const STEP = 92;
const CLOSE_STEP = 76;
/** More rows than this stand closer. */
const MANY = 6;
/** Between two upright wires that stand side by side. */
export const COLUMN = 16;
/** Between a leg and a wire that passes rows beside it. */
export const LANE = 17;

/** Rows too close for words between them. */
export const isClose = (roads: number): boolean => roads > MANY;

/** Wide enough for words beside the drawing. */
export const isWide = (width: number): boolean => width >= 560;

/** The fixed lines of a rows drawing, px. */
export interface Frame {
  readonly width: number;
  readonly roads: readonly Road[];
  readonly controller: Point & { readonly width: number; readonly height: number };
  readonly rails: { readonly west: number; readonly east: number };
  /** Where the legs stand upright: the feed, the return of the fixed side, the return of the deck. */
  readonly buses: { readonly feed: number; readonly return: number; readonly deck: number };
  readonly hasPlug: boolean;
  /** Whether each road's return goes home by itself. */
  readonly star: boolean;
  /** Wires of the legs which pass rows that are none of theirs. */
  readonly detours: readonly Detour[];
  /** Middle line of a road's row. */
  readonly rowY: (road: string) => number;
}

/** Whether a dropper's far end sits on the other leg. */
export const isCross = (run: Run): boolean =>
  run.road !== undefined &&
  (run.job === 'feed' ? run.from.startsWith('return') : run.to.startsWith('feed'));

/** The roads in the order of their rows. */
function rowsOrder(yard: Yard, order: readonly string[]): readonly Road[] {
  const all = roadsOf(yard);
  return order.length === 0
    ? all
    : order.flatMap((name) => all.filter((road) => road.name === name));
}

/** Room needed beside the return leg for wires that go round the outside. */
function outside(yard: Yard, runs: readonly Run[]): number {
  if (yard.return === 'star') return 12 * (roadsOf(yard).length - 1);
  const round = runs.filter(({ id }) => id === 'loop link 1' || id.startsWith('closing link'));
  return round.length === 0 ? 0 : 6 + COLUMN * (yard.plug ? round.length - 1 : 1);
}

/** The frame of a wiring drawn in `width` px, feed in the west: a mirrored one is turned round when it is laid. */
export function frameOf(
  yard: Yard,
  runs: readonly Run[],
  { width, drawn }: { readonly width: number; readonly drawn: Redrawn }
): Frame {
  const roads = rowsOrder(yard, drawn.order);
  const hasPlug = yard.plug !== false;
  const around = detours(
    runs,
    roads.map(({ name }) => name)
  );
  const lanes = (job: Run['job']) =>
    LANE * Math.max(0, ...around.filter((each) => each.job === job).map(({ lane }) => lane));
  const margin = isWide(width) ? 34 : 26;
  const west = margin + lanes('feed');
  const home = width - margin - outside(yard, runs) - lanes('return');
  const deck = hasPlug ? home - COLUMN * 2 : home;
  const need = (job: Run['job']) =>
    Math.max(
      ...runs.filter((run) => run.road && run.job === job && !isCross(run)).map(roomFor),
      hasPlug ? 30 : 48
    );
  const plugs = yard.plug ? yard.plug.returnContacts - 1 : 0;
  const box = { width: isWide(width) ? 200 : 176, height: 48 };
  const first = hasPlug ? FIRST_WITH_PLUG : FIRST;
  const step = isClose(roads.length) ? CLOSE_STEP : STEP;
  const row = new Map(roads.map(({ name }, index) => [name, first + index * step]));
  return {
    width,
    roads,
    hasPlug,
    star: yard.return === 'star',
    detours: around,
    controller: { ...box, x: (width - box.width) / 2, y: TOP - box.height / 2 },
    rails: { west: west + need('feed') + 20, east: deck - need('return') - 16 - plugs * COLUMN },
    buses: { feed: west, return: home, deck },
    rowY: (road) => row.get(road) ?? first
  };
}
