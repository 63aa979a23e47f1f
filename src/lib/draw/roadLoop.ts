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

/** Roads on whose way two points may lie, the likeliest first. */
function roadsFor(all: readonly Place[], pair: readonly string[], meant: readonly string[]) {
  const own = all.flatMap(({ id, road }) =>
    pair.includes(id) && road !== undefined ? [road] : []
  );
  const first = own.filter((road) => meant.includes(road));
  return unique([...first, ...own, ...meant, ...all.flatMap(({ road }) => road ?? [])]);
}

const unique = (names: readonly string[]): readonly string[] => [...new Set(names)];

/**
 * The way of the road on which two points lie, with the two marked; undefined where they do not lie
 * on the way of one road. `meant` are the roads to take where the points tell of none.
 */
export function roadLoop(
  yard: Yard,
  pair: readonly [string, string],
  meant: readonly string[]
): RoadLoop | undefined {
  const runs = wire(yard).filter(({ job }) => job !== 'lamp');
  const all = points(runs);
  for (const road of roadsFor(all, pair, meant)) {
    const loop = loopOf({ yard, runs, all, pair }, road);
    if ([...loop.out, ...loop.home].filter(({ lead }) => lead !== undefined).length > 1)
      return loop;
  }
  return undefined;
}

interface Subject {
  readonly yard: Yard;
  readonly runs: readonly Run[];
  readonly all: readonly Place[];
  readonly pair: readonly [string, string];
}

function loopOf({ yard, runs, all, pair }: Subject, road: string): RoadLoop {
  const nodes = pair.map((id) => all.find((point) => point.id === id)?.node);
  const onWay = (way: readonly string[], top: number): readonly LoopPlace[] =>
    way
      .flatMap((node) => {
        const lead = nodes.indexOf(node);
        const point =
          all.find(({ id }) => id === pair[lead]) ??
          all.find((each) => each.node === node && (each.road ?? road) === road);
        return point ? [{ point, lead }] : [];
      })
      .map(({ point: { id, name }, lead }, index) => ({
        id,
        name,
        lead: lead === 0 || lead === 1 ? lead : undefined,
        y: top + index * STEP
      }));
  const out = onWay(wayThrough(runs, feedOf(yard, road), `feed rail ${road}`), TOP);
  const foot = (out.at(-1)?.y ?? TOP) + LOCO;
  const home = onWay(wayThrough(runs, `return rail ${road}`, 'return'), foot);
  return { road, out, home, height: (home.at(-1)?.y ?? foot) + TOP };
}
