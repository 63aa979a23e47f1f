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
  /** Conductors that its rails reach by any contact, loco or lamp, the terminals left out. */
  readonly reach: ReadonlySet<number>;
  /** The switched contacts met on the way, nearest to the rails first; undefined when no setting can make it live. */
  readonly contacts: readonly number[] | undefined;
}

/** Goes from a road's rails by every way there may be, as far as the terminals. */
export function cone({ network, rails, source }: Case): Cone {
  const { rep, ways } = network;
  const ends = source.map(rep);
  const start = [rep(rails.feed), rep(rails.home)];
  const met = new Set(start.filter((conductor) => ends.includes(conductor)));
  const queue = start.filter((conductor) => !ends.includes(conductor));
  const reach = new Set(queue);
  const contacts = new Set<number>();
  for (let index = 0; index < queue.length; index++) {
    for (const { to: next, contact } of ways(queue[index] as number)) {
      const to = rep(next);
      if (contact >= 0) contacts.add(contact);
      if (ends.includes(to)) met.add(to);
      else if (!reach.has(to)) {
        reach.add(to);
        queue.push(to);
      }
    }
  }
  const whole = ends.every((end) => met.has(end));
  return { reach, contacts: whole ? [...contacts] : undefined };
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
