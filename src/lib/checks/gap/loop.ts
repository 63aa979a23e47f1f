import { LOAD, type Network } from './network';
import type { Rails } from './wiring';

/** Which switched contacts are made. */
export type Made = (contact: number) => boolean;

type Pair = readonly [number, number];

/** A road in a moment, and a source that might drive it. */
export interface Case {
  readonly network: Network;
  readonly rails: Rails;
  readonly source: Pair;
}

/** What can have a say about a road. */
export interface Cone {
  /** Conductors that its rails reach by any contact, loco or lamp, the terminals left out; of a road that is dead anyway those that show it. */
  readonly reach: ReadonlySet<number>;
  /** Whether it comes to a terminal. */
  readonly met: boolean;
  /** The switched contacts met on the way, nearest to the rails first; undefined when no setting can make it live. */
  readonly contacts: readonly number[] | undefined;
}

interface Spread {
  readonly reach: Set<number>;
  readonly met: Set<number>;
  readonly contacts: Set<number>;
}

/** Goes from some conductors by every way there may be, as far as the ends, and past one that is shut. */
function spread({ rep, ways }: Network, from: readonly number[], ends: Pair, shut = -1): Spread {
  const met = new Set<number>();
  const reach = new Set<number>();
  const contacts = new Set<number>();
  const queue: number[] = [];
  const visit = (to: number) => {
    if (ends.includes(to)) met.add(to);
    else if (to !== shut && !reach.has(to)) {
      reach.add(to);
      queue.push(to);
    }
  };
  from.forEach(visit);
  for (let index = 0; index < queue.length; index++) {
    for (const { to, contact } of ways(queue[index] as number)) {
      if (contact >= 0) contacts.add(contact);
      visit(rep(to));
    }
  }
  return { reach, met, contacts };
}

/**
 * Goes from a road's rails by every way there may be, as far as the terminals. A road is dead anyway
 * when one of its rails reaches no terminal except through the other, or both rails reach one alone.
 */
export function cone({ network, rails, source }: Case): Cone {
  const ends: Pair = [network.rep(source[0]), network.rep(source[1])];
  const [feed, home]: Pair = [network.rep(rails.feed), network.rep(rails.home)];
  if (ends[0] !== ends[1] && feed !== home) {
    for (const [rail, other] of [
      [feed, home],
      [home, feed]
    ] as const) {
      const { reach, met } = spread(network, [rail], ends, other);
      if (met.size === 0) return { reach, met: false, contacts: undefined };
    }
  }
  const { reach, met, contacts } = spread(network, [feed, home], ends);
  const whole = ends.every((end) => met.has(end));
  return { reach, met: met.size > 0, contacts: whole ? [...contacts] : undefined };
}

/**
 * Whether current can flow through a loco on the road: two ways lead from the two terminals to its
 * two rails and share no conductor. Conductors are taken as perfect, locos elsewhere as ways like any
 * other. Two such ways exist exactly when no single conductor parts the rails from the terminals;
 * one that did would lie on every way, so those on the first way found are tried. Where the terminals
 * are shorted, a road counts when contacts join both its rails to the short.
 * Source: Menger's theorem.
 */
export function closesLoop({ network, rails, source }: Case, made: Made): boolean {
  const { rep } = network;
  const ends: Pair = [rep(source[0]), rep(source[1])];
  const goals: Pair = [rep(rails.feed), rep(rails.home)];
  const search = { network, made, ends, locos: true };
  if (ends[0] === ends[1]) {
    return goals.every((goal) => way({ ...search, goals: [goal, goal], locos: false }));
  }
  const bridged = goals[0] === goals[1];
  if (bridged && ends.includes(goals[0])) return false;
  const first = way({ ...search, goals });
  return (
    first !== undefined &&
    first.every((shut) => (bridged && goals.includes(shut)) || way({ ...search, goals, shut }))
  );
}

interface Search {
  readonly network: Network;
  readonly made: Made;
  readonly ends: Pair;
  readonly goals: Pair;
  /** Whether locos elsewhere are ways. */
  readonly locos: boolean;
  /** A conductor that may not be used. */
  readonly shut?: number;
}

/** The conductors of one way from an end to a goal, if there is one. */
function way({ network, made, ends, goals, locos, shut }: Search): readonly number[] | undefined {
  const before = new Map<number, number>();
  const queue: number[] = [];
  const visit = (to: number, from: number) => {
    if (to === shut || before.has(to)) return;
    before.set(to, from);
    queue.push(to);
  };
  for (const goal of goals) visit(goal, goal);
  for (let index = 0; index < queue.length; index++) {
    const at = queue[index] as number;
    if (ends.includes(at)) return back(before, at);
    for (const { to, contact } of network.ways(at)) {
      if (contact === LOAD ? locos : contact < 0 || made(contact)) visit(network.rep(to), at);
    }
  }
  return undefined;
}

function back(before: ReadonlyMap<number, number>, end: number): readonly number[] {
  const path = [end];
  for (
    let at = end, next = before.get(at);
    next !== undefined && next !== at;
    next = before.get(at)
  ) {
    path.push(next);
    at = next;
  }
  return path;
}
