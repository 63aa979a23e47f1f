import type { Run } from '../yard';
import { HALF_GAUGE, isCross, LANE, TOP, type Frame } from './frame';
import type { Point, Polyline } from './geometry';

/** Height at which the returns of deck and fixed roads come together. */
const JOINT_Y = TOP + 26;

/** The line along which a run is drawn. */
export function lineOf(run: Run, frame: Frame): Polyline {
  if (run.road === undefined) return legLine(run, frame);
  return run.job === 'feed' ? feedLine(run, frame) : returnLine(run, frame);
}

function feedLine(run: Run, frame: Frame): Polyline {
  const { rails, rowY, feedX } = frame;
  const y = rowY(run.road as string) + HALF_GAUGE;
  if (!isCross(run))
    return [
      { x: feedX(run.road as string), y },
      { x: rails.west, y }
    ];
  const low = y + 26;
  const x = rails.east - 14;
  return [
    nodePoint(run.from, frame),
    { x: nodePoint(run.from, frame).x, y: low },
    { x, y: low },
    { x, y }
  ];
}

function returnLine(run: Run, frame: Frame): Polyline {
  const { rails, rowY, feedX } = frame;
  const y = rowY(run.road as string) - HALF_GAUGE;
  if (!isCross(run))
    return [
      { x: rails.east, y },
      { x: nodePoint(run.to, frame).x, y }
    ];
  const high = y - 30;
  const x = rails.west + 14;
  return [
    { x, y },
    { x, y: high },
    { x: feedX(run.road as string), y: high }
  ];
}

/** Where a node of the legs stands. */
export function nodePoint(node: string, frame: Frame): Point {
  const { controller, second, buses, rowY, roads, hasPlug } = frame;
  if (node === 'feed 2' && second) return { x: second.x, y: second.y + second.height / 2 };
  if (node === 'feed') return { x: controller.x, y: TOP };
  if (node === 'return') return { x: controller.x + controller.width, y: TOP };
  if (node === 'return joint') return { x: buses.return, y: JOINT_Y };
  if (node === 'deck joint') {
    const first = roads.find(({ bed }) => bed === 'deck')?.name ?? '';
    return { x: buses.deck, y: rowY(first) - 44 };
  }
  const name = node.split(' ').at(-1) as string;
  if (node.startsWith('feed')) return { x: frame.feedX(name), y: rowY(name) + HALF_GAUGE };
  const index = roads.findIndex((road) => road.name === name);
  const onDeck = hasPlug && roads[index]?.bed === 'deck';
  const aside = frame.starColumn * index;
  return { x: (onDeck ? buses.deck : buses.return) + aside, y: rowY(name) - HALF_GAUGE };
}

/** A rail joiner goes from a section's row to the next one's, beside the rails' east end. */
function joinerLine(run: Run, { rails, rowY }: Frame): Polyline {
  const aside = run.job === 'feed' ? HALF_GAUGE : -HALF_GAUGE;
  const [from, to] = [run.from, run.to].map((node) => rowY(node.split(' ').at(-1) as string));
  const x = rails.east - 24;
  return [
    { x, y: (from as number) + aside },
    { x, y: (to as number) + aside }
  ];
}

function legLine(run: Run, frame: Frame): Polyline {
  if (run.from.includes(' rail ')) return joinerLine(run, frame);
  const [from, to] = [nodePoint(run.from, frame), nodePoint(run.to, frame)];
  const around = (x: number, low: number): Polyline => [
    from,
    { x: from.x, y: low },
    { x, y: low },
    { x, y: to.y },
    to
  ];
  const lane = frame.detours.find(({ id }) => id === run.id)?.lane;
  if (lane !== undefined) return aroundLine(run, frame, lane);
  if (run.id === 'feed wire' || run.id === 'feed 2 wire') return [from, { x: to.x, y: from.y }, to];
  if (run.id === 'return wire') return [from, { x: from.x, y: to.y }, to];
  if (run.id.startsWith('plug return')) return plugLine(run, frame, [from, to]);
  if (run.id === 'closing link') {
    return frame.hasPlug ? around(from.x + frame.column, from.y + 34) : homeRound(from, frame);
  }
  const outer = from.x + (frame.outer.indexOf(run.id) + 1) * frame.column;
  if (run.id.startsWith('closing link')) return around(outer, from.y + 34);
  if (outer > from.x && frame.roads[0]?.bed === 'west') return around(outer, from.y);
  return from.x === to.x ? [from, to] : [from, { x: from.x, y: to.y }, to];
}

/** Beside its leg, past rows that are none of its own. */
function aroundLine(run: Run, frame: Frame, lane: number): Polyline {
  const [from, to] = [nodePoint(run.from, frame), nodePoint(run.to, frame)];
  const bus = run.job === 'feed' ? frame.buses.feed : frame.buses.return;
  const x = bus + (run.job === 'feed' ? -1 : 1) * LANE * lane;
  return [from, { x, y: from.y }, { x, y: to.y }, to];
}

/** A ring's last wire goes round the outside to the controller's own terminal. */
function homeRound(from: Point, { controller, width }: Frame): Polyline {
  const low = from.y + 38;
  const high = TOP - 10;
  return [
    from,
    { x: from.x, y: low },
    { x: width - 12, y: low },
    { x: width - 12, y: high },
    { x: controller.x + controller.width, y: high }
  ];
}

/** Return contacts of the plug stand side by side. */
function plugLine(
  run: Run,
  { buses, column }: Frame,
  [from, to]: readonly [Point, Point]
): Polyline {
  const index = Number(run.id.split(' ').at(-1)) - 1;
  const x = from.x - index * column;
  const end = index === 0 ? to : { x: buses.deck, y: to.y };
  return [from, { x, y: from.y }, { x, y: to.y }, end].filter(
    (point, at, all) => at === 0 || point.x !== all[at - 1]?.x || point.y !== all[at - 1]?.y
  );
}
