import { leastDegreeFirst } from './order';

/** Branches between core nodes 0 … count−1; branch n joins a[n] and b[n]. */
export interface Graph {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
}

/**
 * The order of elimination and everything that can be worked out before numbers are known.
 *
 * A slot is a pair of nodes that are joined when the first of the two is eliminated; it belongs to
 * that first node and points from it to the other. What flows into slots are the branches between
 * their nodes, then one contribution for each pair of slots of each eliminated node.
 */
export interface Pattern {
  /** Node eliminated k-th. */
  readonly node: Int32Array;
  /** Slots of the node eliminated k-th: start[k] … start[k+1]−1. */
  readonly start: Int32Array;
  /** The node at the far end of each slot. */
  readonly far: Int32Array;
  /** When that node's turn comes; rising among the slots of one node. */
  readonly turn: Int32Array;
  /** Per branch: its slot, −1 when it ends where it began, and +1 or −1 as it lies along or against. */
  readonly slot: Int32Array;
  readonly sense: Int8Array;
  /** Per branch: position of the node whose slot that is, −1 for none. */
  readonly owner: Int32Array;
  /** Pairs of the node eliminated k-th from pair[k] on: slots one[p] and two[p] feed slot target[p]. */
  readonly pair: Int32Array;
  readonly one: Int32Array;
  readonly two: Int32Array;
  readonly target: Int32Array;
  /** The branches and the pairs that flow into each slot, as lists end to end. */
  readonly branches: Lists;
  readonly pairs: Lists;
}

/** Lists end to end: list n is item[start[n]] … item[start[n+1]−1]. */
export interface Lists {
  readonly start: Int32Array;
  readonly item: Int32Array;
}

/** Works out the pattern of a graph. */
export function patternOf(graph: Graph): Pattern {
  const { node, near } = leastDegreeFirst(graph);
  const position = new Int32Array(graph.count);
  node.forEach((at, k) => (position[at] = k));
  // In the order of elimination, so that every pair runs the way of the slot that it feeds.
  near.forEach((list) => list.sort((i, j) => (position[i] ?? 0) - (position[j] ?? 0)));
  const start = sums(near.map((list) => list.length));
  const slots = near.map((list, k) => new Map(list.map((at, i) => [at, (start[k] ?? 0) + i])));
  const slotOf = (i: number, j: number): number => slots[position[i] ?? 0]?.get(j) ?? -1;
  const count = start.at(-1) ?? 0;
  return {
    node,
    start,
    far: Int32Array.from(near.flat()),
    turn: Int32Array.from(near.flat(), (at) => position[at] ?? 0),
    ...branchSlots(graph, position, slotOf, count),
    ...pairSlots(near, start, slotOf)
  };
}

type SlotOf = (first: number, later: number) => number;

function branchSlots(
  { a, b }: Graph,
  position: Int32Array,
  slotOf: SlotOf,
  count: number
): Pick<Pattern, 'slot' | 'sense' | 'owner' | 'branches'> {
  const slot = new Int32Array(a.length).fill(-1);
  const sense = new Int8Array(a.length);
  const owner = new Int32Array(a.length).fill(-1);
  a.forEach((from, n) => {
    const to = b[n] ?? 0;
    if (from === to) return;
    const [pf, pt] = [position[from] ?? 0, position[to] ?? 0];
    slot[n] = pf < pt ? slotOf(from, to) : slotOf(to, from);
    sense[n] = pf < pt ? 1 : -1;
    owner[n] = Math.min(pf, pt);
  });
  return { slot, sense, owner, branches: listsOf(slot, count) };
}

function pairSlots(
  near: readonly (readonly number[])[],
  start: Int32Array,
  slotOf: SlotOf
): Pick<Pattern, 'pair' | 'one' | 'two' | 'target' | 'pairs'> {
  const [pair, one, two, target]: [number[], number[], number[], number[]] = [[], [], [], []];
  near.forEach((list, k) => {
    pair.push(one.length);
    list.forEach((at, i) => {
      for (let j = i + 1; j < list.length; j++) {
        one.push((start[k] ?? 0) + i);
        two.push((start[k] ?? 0) + j);
        target.push(slotOf(at, list[j] ?? 0));
      }
    });
  });
  return {
    pair: Int32Array.from(pair),
    one: Int32Array.from(one),
    two: Int32Array.from(two),
    target: Int32Array.from(target),
    pairs: listsOf(target, start.at(-1) ?? 0)
  };
}

/** For each of `count` values, in order, the places where it stands; −1 is left out. */
function listsOf(values: ArrayLike<number>, count: number): Lists {
  const lists: number[][] = Array.from({ length: count }, () => []);
  for (let n = 0; n < values.length; n++) lists[values[n] ?? -1]?.push(n);
  return { start: sums(lists.map((list) => list.length)), item: Int32Array.from(lists.flat()) };
}

/** 0, then the running sums. */
function sums(lengths: readonly number[]): Int32Array {
  const all = new Int32Array(lengths.length + 1);
  lengths.forEach((length, n) => (all[n + 1] = (all[n] ?? 0) + length));
  return all;
}
