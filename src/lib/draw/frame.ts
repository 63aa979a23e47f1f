import type { Redrawn } from '../lesson';
import { feedOf, roadsOf, type Road, type Run, type Yard } from '../yard';
import { detours, type Detour } from './detours';
import type { Box } from './geometry';
import { LAMP_ROOM } from './lampRows';
import { roomFor, roomy, tight, type Pitch } from './run';

/** Height of the legs' top, and half the drawn gauge, px. */
export const TOP = 34;
export const HALF_GAUGE = 8;
/** Room above the first row, more where the plug's wires come together there; and from row to row. */
const FIRST = 130;
const FIRST_WITH_PLUG = 158;
const STEP = 92;
const CLOSE_STEP = 76;
const CONDENSED_STEP = { wide: 42, narrow: 48 };
/** More rows than this stand closer; more than that are condensed. */
const MANY = 6;
const VERY_MANY = 12;
/** Room for the words of condensed rows, west of the feed. */
const LABEL_ROOM = 58;
/** Room that the owner's names take under each row, px. */
const NAME_ROOM = { spaced: 22, condensed: 14 };
/** Between a leg and a wire that passes rows beside it. */
export const LANE = 17;

/** Below the first controller's box: the second one's, with words under it. */
const SECOND_BELOW = 26;
const SECOND_ROOM = 100;
/** Between the upright legs of two feeds. */
const FEED_COLUMN = 20;

/** Rows too close for words between them. */
export const isClose = (roads: number): boolean => roads > MANY;

/** Rows so many that the words of each stand beside its feed and its loco, which is drawn smaller. */
export const isCondensed = (roads: number): boolean => roads > VERY_MANY;

/** Wide enough for words beside the drawing. */
export const isWide = (width: number): boolean => width >= 560;

/** The fixed lines of a rows drawing, px. */
export interface Frame {
  readonly width: number;
  readonly roads: readonly Road[];
  readonly controller: Box;
  /** The second controller's box, where there is one. */
  readonly second: Box | undefined;
  readonly rails: { readonly west: number; readonly east: number };
  /** Where the legs stand upright: the feed, the second one, the return of the fixed side, the return of the deck. */
  readonly buses: {
    readonly feed: number;
    readonly feed2: number;
    readonly return: number;
    readonly deck: number;
  };
  /** Where the leg that feeds a road stands. */
  readonly feedX: (road: string) => number;
  readonly hasPlug: boolean;
  readonly pitch: Pitch;
  /** Between two upright wires that stand side by side. */
  readonly column: number;
  /** Between the returns of two roads which go home by themselves; 0 where they do not. */
  readonly starColumn: number;
  /** Wires of the legs which pass rows that are none of theirs. */
  readonly detours: readonly Detour[];
  /** Ids of the wires that go round the outside, the innermost first. */
  readonly outer: readonly string[];
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

/** From row to row, without lamps and names, px. */
function stepOf(roads: number, wide: boolean): number {
  if (isCondensed(roads)) return CONDENSED_STEP[wide ? 'wide' : 'narrow'];
  return isClose(roads) ? CLOSE_STEP : STEP;
}

/** Height of every road's row, from that of the first one and the step. */
function rowYs(
  { names }: Yard,
  roads: readonly Road[],
  { first, step }: { readonly first: number; readonly step: number }
): ReadonlyMap<string, number> {
  const room = NAME_ROOM[isCondensed(roads.length) ? 'condensed' : 'spaced'];
  let y = first;
  return new Map(
    roads.map(({ name }) => {
      const here = y;
      y += step + (names[name] ? room : 0);
      return [name, here];
    })
  );
}

/** Between two wires of a star, and what is left for the rest where it has many, px. */
const STAR_COLUMN = 12;
const BESIDE_STAR = { wide: 460, narrow: 320 };

/** Width in which the rows are drawn: a star of many wires takes more than there is. */
export function widthFor(yard: Yard, width: number): number {
  if (yard.return !== 'star') return width;
  const star = STAR_COLUMN * (roadsOf(yard).length - 1);
  const least = Math.max(width, star + BESIDE_STAR.narrow);
  return isWide(least) ? Math.max(least, star + BESIDE_STAR.wide) : least;
}

/** Ids of the wires that go round the outside: from the fixed roads in the east past those in the west, and the last wire of a ring of either. */
function outerWays(yard: Yard, runs: readonly Run[]): readonly string[] {
  const east = roadsOf(yard)
    .filter(({ bed }) => bed === 'east')
    .map(({ name }) => `loop link ${name}`);
  return runs
    .map(({ id }) => id)
    .filter((id) => east.includes(id) || id.startsWith('closing link '));
}

/** Room needed beside the return leg for wires that go round the outside. */
function outside(yard: Yard, runs: readonly Run[], column: number): number {
  if (yard.return === 'star') return STAR_COLUMN * (roadsOf(yard).length - 1);
  const deckRing = runs.some(({ id }) => id === 'closing link');
  const round = outerWays(yard, runs).length + (deckRing ? 1 : 0);
  return round === 0 ? 0 : 6 + column * (yard.plug ? round - 1 : 1);
}

/** The frame of a wiring drawn in `width` px, feed in the west: a mirrored one is turned round when it is laid. */
export function frameOf(
  yard: Yard,
  runs: readonly Run[],
  { width, drawn }: { readonly width: number; readonly drawn: Redrawn }
): Frame {
  const roads = rowsOrder(yard, drawn.order);
  const hasPlug = yard.plug !== false;
  const wide = isWide(width);
  const [usual, column, pitch] = wide ? [34, 16, roomy] : [22, 12, tight];
  const margin = isCondensed(roads.length) ? LABEL_ROOM : usual;
  const around = drawn.order.length === 0 ? [] : detours(runs, drawn.order);
  const lanes = (job: Run['job']) =>
    LANE * Math.max(0, ...around.filter((each) => each.job === job).map(({ lane }) => lane));
  const west = margin + lanes('feed');
  const home = width - usual - outside(yard, runs, column) - lanes('return');
  const deck = hasPlug ? home - column * 2 : home;
  const need = (job: Run['job']) =>
    Math.max(
      ...runs
        .filter((run) => run.road && run.job === job && !isCross(run))
        .map((run) => roomFor(run, pitch)),
      wide && !hasPlug ? 48 : 20
    );
  const box = { width: wide ? 200 : 176, height: 48 };
  const lampRoom = yard.lamps === 'none' ? 0 : LAMP_ROOM;
  const first = (hasPlug ? FIRST_WITH_PLUG : FIRST) + lampRoom + (yard.second ? SECOND_ROOM : 0);
  const step = stepOf(roads.length, wide) + lampRoom;
  const controller = { ...box, x: (width - box.width) / 2, y: TOP - box.height / 2 };
  const feed2 = west + (yard.second ? FEED_COLUMN : 0);
  const row = rowYs(yard, roads, { first, step });
  return {
    width,
    roads,
    hasPlug,
    pitch,
    column,
    starColumn: yard.return === 'star' ? STAR_COLUMN : 0,
    detours: around,
    outer: outerWays(yard, runs),
    controller,
    second: yard.second && { ...controller, y: controller.y + box.height + SECOND_BELOW },
    rails: {
      west: feed2 + need('feed') + (wide ? 20 : 4),
      east: deck - need('return') - (wide ? 16 : 4)
    },
    buses: { feed: west, feed2, return: home, deck },
    feedX: (road) => (feedOf(yard, road) === 'feed' ? west : feed2),
    rowY: (road) => row.get(road) ?? first
  };
}
