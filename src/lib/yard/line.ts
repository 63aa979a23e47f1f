import { beyond } from './deck';
import { roadNamed, type Road } from './road';
import type { Standing } from './standing';
import { vehicleIn } from './vehicles';
import type { Yard } from './yard';

type Way = 'west' | 'east';

/** Where rails end, and by what. */
interface Closing {
  readonly kind: 'gap' | 'barrier' | 'backstop';
  readonly atMm: number;
}

/** A road of a line: where its west end lies. */
interface Stretch {
  readonly name: string;
  readonly westMm: number;
  readonly lengthMm: number;
}

/** The roads that lie end to end with the deck as it stands, in mm from the west end of one of them. */
export interface Line {
  readonly yard: Yard;
  readonly roads: readonly Stretch[];
  readonly west: Closing;
  readonly east: Closing;
}

/** Walks from road to road one way, to where the rails end. */
function walk(yard: Yard, deck: number, { from, end }: { from: Stretch; end: Way }) {
  const roads: Stretch[] = [];
  let last = from;
  for (;;) {
    const next = beyond(yard, deck, last.name, end);
    if (next.kind !== 'road') {
      const atMm = end === 'east' ? last.westMm + last.lengthMm : last.westMm;
      return { roads, closing: { kind: next.kind, atMm } };
    }
    const { name, lengthMm }: Road = roadNamed(yard, next.road);
    const westMm = end === 'east' ? last.westMm + last.lengthMm : last.westMm - lengthMm;
    last = { name, lengthMm, westMm };
    roads.push(last);
  }
}

/** The line on which a road lies, in mm from the road's own west end. */
export function lineOf(yard: Yard, deck: number, road: string): Line {
  const { name, lengthMm } = roadNamed(yard, road);
  const from = { name, lengthMm, westMm: 0 };
  const [west, east] = (['west', 'east'] as const).map((end) => walk(yard, deck, { from, end }));
  return {
    yard,
    roads: [...(west?.roads ?? []).reverse(), from, ...(east?.roads ?? [])],
    west: west?.closing as Closing,
    east: east?.closing as Closing
  };
}

/**
 * How far east and west the middle of a vehicle can be: its body clear of barriers and backstops, its
 * wheels on rails before a gap.
 */
export function limits(line: Line, name: string): Readonly<Record<Way, number>> {
  const { lengthMm, wheelSpanMm } = vehicleIn(line.yard, name);
  const inset = ({ kind }: Closing) => (kind === 'gap' ? wheelSpanMm : lengthMm) / 2;
  return {
    west: line.west.atMm + inset(line.west),
    east: line.east.atMm - inset(line.east)
  };
}

/** Where a vehicle stands that has come to `atMm` on the line of a road: on which road, and where there. */
export function hop(line: Line, { road, atMm }: Pick<Standing, 'road' | 'atMm'>) {
  const own = line.roads.find(({ name }) => name === road);
  if (own && atMm >= 0 && atMm <= own.lengthMm) return { road, atMm };
  const onto =
    atMm < 0
      ? line.roads.find(({ westMm, lengthMm }) => westMm + lengthMm >= atMm)
      : line.roads.findLast(({ westMm }) => westMm <= atMm);
  return onto ? { road: onto.name, atMm: atMm - onto.westMm } : { road, atMm };
}

/** Place of another vehicle in mm on a line; undefined where no rails lead to it. */
export function placeOn(line: Line, other: Standing): number | undefined {
  const there = line.roads.find(({ name }) => name === other.road);
  return there && !other.fallen ? there.westMm + other.atMm : undefined;
}
