import { feedOf, placed, points, wire, type Point as Place, type Run, type Yard } from '../yard';

/** A place on a road's way where a probe can be held. */
export interface LoopPlace {
  readonly id: string;
  readonly name: string;
  readonly y: number;
  /** The lead that is held there, the first one's first. */
  readonly lead: 0 | 1 | undefined;
}

/** The way of a road's current, out by the feed and home by the return, top to bottom. */
export interface RoadLoop {
  readonly road: string;
  readonly out: readonly LoopPlace[];
  readonly home: readonly LoopPlace[];
  readonly height: number;
}

/** From place to place, and of the loco between the rails, px. */
const STEP = 27;
const LOCO = 50;
const TOP = 18;

/** Nodes on the shortest way through these runs; none where there is no way. */
function wayThrough(runs: readonly Run[], from: string, to: string): readonly string[] {
  const next = new Map<string, string[]>();
  for (const run of runs) {
    const parts = placed(run);
    const hops = parts.length > 0 ? parts : [run];
    for (const hop of hops) {
      next.set(hop.from, [...(next.get(hop.from) ?? []), hop.to]);
      next.set(hop.to, [...(next.get(hop.to) ?? []), hop.from]);
    }
  }
  const before = new Map<string, string | undefined>([[from, undefined]]);
  const queue = [from];
  for (const node of queue) {
    for (const other of next.get(node) ?? []) {
      if (before.has(other)) continue;
      before.set(other, node);
      queue.push(other);
    }
  }
  const way: string[] = [];
  for (let node = before.has(to) ? to : undefined; node !== undefined; node = before.get(node)) {
    way.unshift(node);
  }
  return way;
}

/** The road on whose way two points lie. */
function roadOf(all: readonly Place[], pair: readonly string[], roads: readonly string[]) {
  const own = all.filter(({ id, road }) => pair.includes(id) && road !== undefined);
  return own.find(({ road }) => roads.includes(road ?? ''))?.road ?? own[0]?.road ?? roads[0];
}

/**
 * The way of the road on which two points lie, with the two marked; undefined where they do not lie
 * on the way of one road. `roads` are those that are meant where the points tell of none.
 */
export function roadLoop(
  yard: Yard,
  pair: readonly [string, string],
  roads: readonly string[]
): RoadLoop | undefined {
  const runs = wire(yard).filter(({ job }) => job !== 'lamp');
  const all = points(runs);
  const road = roadOf(all, pair, roads);
  if (road === undefined) return undefined;
  const nodeOf = (id: string) => all.find((point) => point.id === id)?.node;
  const nodes = pair.map(nodeOf);
  const onWay = (way: readonly string[], top: number): readonly LoopPlace[] =>
    way
      .flatMap((node) => {
        const lead = nodes.indexOf(node);
        const point =
          all.find(({ id }) => id === pair[lead]) ??
          all.find((each) => each.node === node && (each.road ?? road) === road);
        return point ? [{ id: point.id, name: point.name, lead: lead < 0 ? undefined : lead }] : [];
      })
      .map((place, index) => ({
        ...place,
        lead: place.lead as 0 | 1 | undefined,
        y: top + index * STEP
      }));
  const out = onWay(wayThrough(runs, feedOf(yard, road), `feed rail ${road}`), TOP);
  const foot = (out.at(-1)?.y ?? TOP) + LOCO;
  const home = onWay(wayThrough(runs, `return rail ${road}`, 'return'), foot);
  const held = [...out, ...home].filter(({ lead }) => lead !== undefined);
  if (held.length < 2) return undefined;
  return { road, out, home, height: (home.at(-1)?.y ?? foot) + TOP };
}
