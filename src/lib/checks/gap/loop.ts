import { LOAD, type Network } from './network';
import { valueAt } from './value-at';
import type { Rails } from './wiring';

/** Which switched contacts are made. */
export type Made = (contact: number) => boolean;

type Pair = readonly [number, number];

/** A road and its source, as a key of what is known of a network. */
export const caseKey = ({ rails, source }: Pick<Case, 'rails' | 'source'>): string =>
  `${rails.name} ${source.join()}`;

/** A road in a moment, and a source that might drive it. */
export interface Case {
  readonly network: Network;
  readonly rails: Rails;
  readonly source: Pair;
}

/** The part of a network that a road's rails reach, with numbers of its own; the terminals have the last ones. */
interface Graph {
  /** By conductor, where each way leads and its contact, one after the other. */
  readonly ways: readonly (readonly number[])[];
  readonly goals: Pair;
  readonly ends: Pair;
}

/** What can have a say about a road. */
export interface Cone {
  /** Conductors that its rails reach by any contact, loco or lamp, the terminals left out; of a road that is dead anyway those that show it. */
  readonly reach: ReadonlySet<number>;
  /** Whether it comes to a terminal. */
  readonly met: boolean;
  /** The switched contacts met on the way, nearest to the rails first; undefined when no setting can make it live. */
  readonly contacts: readonly number[] | undefined;
  readonly graph: Graph | undefined;
}

/** The cone of a case, worked out once. */
export const coneOf = (each: Case): Cone =>
  valueAt(each.network.known.cones, caseKey(each), () => cone(each));

interface Spread {
  /** Conductors in the order in which they are reached. */
  readonly reach: ReadonlyMap<number, number>;
  readonly met: ReadonlySet<number>;
}

/** Goes from some conductors by every way there may be, as far as the ends. */
function spread({ rep, ways }: Network, from: readonly number[], ends: Pair): Spread {
  const met = new Set<number>();
  const reach = new Map<number, number>();
  const queue: number[] = [];
  const visit = (to: number) => {
    if (to === ends[0] || to === ends[1]) met.add(to);
    else if (!reach.has(to)) reach.set(to, queue.push(to) - 1);
  };
  from.forEach(visit);
  for (let index = 0; index < queue.length; index++) {
    for (const { to } of ways(queue[index] as number)) visit(rep(to));
  }
  return { reach, met };
}

/** What a rail reaches except through the other; undefined when it reaches a terminal. */
function sideOf(
  { rep, ways }: Network,
  [rail, other]: Pair,
  ends: Pair
): ReadonlySet<number> | undefined {
  if (ends.includes(rail)) return undefined;
  const reach = new Set([rail]);
  for (const at of reach) {
    for (const { to: next } of ways(at)) {
      const to = rep(next);
      if (to === ends[0] || to === ends[1]) return undefined;
      if (to !== other) reach.add(to);
    }
  }
  return reach;
}

/** What shows that a road is dead anyway, where one of its rails reaches no terminal except through the other. */
export function lostSide({ network, rails, source }: Case): ReadonlySet<number> | undefined {
  const ends: Pair = [network.rep(source[0]), network.rep(source[1])];
  const [feed, home]: Pair = [network.rep(rails.feed), network.rep(rails.home)];
  if (ends[0] === ends[1] || feed === home) return undefined;
  return sideOf(network, [feed, home], ends) ?? sideOf(network, [home, feed], ends);
}

/**
 * Goes from a road's rails by every way there may be, as far as the terminals. A road is dead anyway
 * when its rails are one conductor, when one of them reaches no terminal except through the other, or
 * both reach one alone.
 */
function cone(each: Case): Cone {
  const { network, rails, source } = each;
  const dead = { contacts: undefined, graph: undefined };
  if (network.rep(rails.feed) === network.rep(rails.home))
    return { reach: new Set(), met: false, ...dead };
  const lost = lostSide(each);
  if (lost) return { reach: lost, met: false, ...dead };
  const ends: Pair = [network.rep(source[0]), network.rep(source[1])];
  const goals: Pair = [network.rep(rails.feed), network.rep(rails.home)];
  const { reach, met } = spread(network, goals, ends);
  const found = { reach: new Set(reach.keys()), met: met.size > 0 };
  if (!ends.every((end) => met.has(end))) return { ...found, ...dead };
  const graph = graphOf(network, reach, { ends, goals });
  const contacts = graph.ways.flatMap((ways) => ways.filter((_, at) => at % 2 === 1));
  return { ...found, graph, contacts: [...new Set(contacts.filter((contact) => contact >= 0))] };
}

function graphOf(
  { rep, ways }: Network,
  reach: Spread['reach'],
  { ends, goals }: Pick<Graph, 'ends' | 'goals'>
): Graph {
  const own = (conductor: number) =>
    conductor === ends[0]
      ? reach.size
      : conductor === ends[1]
        ? reach.size + 1
        : (reach.get(conductor) as number);
  const pair = ([a, b]: Pair): Pair => [own(a), own(b)];
  return {
    ways: [...reach.keys()].map((conductor) =>
      ways(conductor).flatMap(({ to, contact }) => [own(rep(to)), contact])
    ),
    goals: pair(goals),
    ends: pair(ends)
  };
}

/**
 * Whether current can flow through a loco on the road: two ways lead from the two terminals to its
 * two rails and share no conductor. Conductors are taken as perfect, locos elsewhere as ways like any
 * other. Two such ways exist exactly when no single conductor parts the rails from the terminals;
 * one that did would lie on every way, so those on the first way found are tried. Where the terminals
 * are shorted, a road counts when contacts join both its rails to the short.
 * Source: Menger's theorem.
 */
export function closesLoop(each: Case, made: Made): boolean {
  const { graph } = coneOf(each);
  if (!graph) return false;
  const { ends, goals } = graph;
  const search = { graph, made, locos: true };
  if (ends[0] === ends[1]) {
    return goals.every((goal) => way({ ...search, goals: [goal, goal], locos: false }));
  }
  const first = way({ ...search, goals });
  return first?.every((shut) => way({ ...search, goals, shut })) ?? false;
}

interface Search {
  readonly graph: Graph;
  readonly made: Made;
  readonly goals: Pair;
  /** Whether locos elsewhere are ways. */
  readonly locos: boolean;
  /** A conductor that may not be used. */
  readonly shut?: number;
}

/** The conductors of one way from an end to a goal, if there is one. */
function way({ graph, made, goals, locos, shut }: Search): readonly number[] | undefined {
  const { ways, ends } = graph;
  const before: number[] = [];
  const queue: number[] = [];
  for (const goal of goals) {
    if (goal === shut || before[goal] !== undefined) continue;
    before[goal] = goal;
    queue.push(goal);
  }
  for (let index = 0; index < queue.length; index++) {
    const at = queue[index] as number;
    if (at === ends[0] || at === ends[1]) return back(before, at);
    const next = ways[at] as readonly number[];
    for (let way = 0; way < next.length; way += 2) {
      const to = next[way] as number;
      const contact = next[way + 1] as number;
      if (to === shut || before[to] !== undefined) continue;
      if (contact === LOAD ? !locos : contact >= 0 && !made(contact)) continue;
      before[to] = at;
      queue.push(to);
    }
  }
  return undefined;
}

function back(before: readonly number[], end: number): readonly number[] {
  const path = [end];
  for (let at = end; before[at] !== at;) {
    at = before[at] as number;
    path.push(at);
  }
  return path;
}

/** What a road still depends on while some contacts are settled. */
export interface Near {
  /** The contacts by which its rails reach anything: the same for the same ways. */
  readonly key: string;
  /** One that may still be made or not, on the shortest way to a terminal; undefined when there is none. */
  readonly open: number | undefined;
}

/** A conductor that is reached, and the first contact on the way that is not settled. */
interface Reached {
  readonly at: number;
  readonly open: number | undefined;
}

/**
 * Goes from a road's rails by contacts that are made or may be, fewest unsettled ones first.
 * `standing` says whether a contact is made, undefined while that is open.
 */
export function nearest(each: Case, standing: (contact: number) => boolean | undefined): Near {
  const { ways, goals, ends } = coneOf(each).graph as Graph;
  const seen = new Set<number>();
  const met: string[] = [];
  let open: number | undefined;
  const visit = ({ at, open: before }: Reached, near: Reached[], far: Reached[]) => {
    if (seen.has(at)) return;
    seen.add(at);
    if (ends.includes(at)) open = before ?? open;
    const next = ways[at] ?? [];
    for (let way = 0; way < next.length; way += 2) {
      const [to, contact] = [next[way] as number, next[way + 1] as number];
      const made = contact < 0 || standing(contact);
      if (made === false) continue;
      if (contact >= 0) met.push(made ? `+${contact}` : `${contact}`);
      if (made) near.push({ at: to, open: before });
      else far.push({ at: to, open: before ?? contact });
    }
  };
  for (let near: Reached[] = goals.map((at) => ({ at, open: undefined })); near.length > 0;) {
    const far: Reached[] = [];
    for (let index = 0; index < near.length; index++) visit(near[index] as Reached, near, far);
    near = far;
  }
  const first = met.find((contact) => !contact.startsWith('+'));
  return { key: met.join(), open: open ?? (first === undefined ? undefined : Number(first)) };
}
