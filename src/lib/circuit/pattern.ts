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
 * that first node and points from it to the other. What flows into slots are contributions: those
 * of the branches, then one for each pair of slots of each eliminated node.
 */
export interface Pattern {
  /** Node eliminated k-th. */
  readonly node: Int32Array;
  /** Slots of the node eliminated k-th: start[k] … start[k+1]−1. */
  readonly start: Int32Array;
  /** The node at the far end of each slot. */
  readonly far: Int32Array;
  /** Position of the first of the far nodes to be eliminated, −1 for none. */
  readonly parent: Int32Array;
  /** Contributions to slot s: feed[feedStart[s]] … feed[feedStart[s+1]−1]. */
  readonly feedStart: Int32Array;
  readonly feed: Int32Array;
  /** The first pair's contribution of the node eliminated k-th. */
  readonly pair: Int32Array;
  /** Per contribution: +1 when it runs the way of its slot, −1 against it, 0 for a branch on itself. */
  readonly sense: Int8Array;
  /** Per branch: position of the node whose slot it feeds, −1 for a branch on itself. */
  readonly owner: Int32Array;
}

/** Works out the pattern of a graph. */
export function patternOf(graph: Graph): Pattern {
  const { node, near } = leastDegreeFirst(graph);
  const position = new Int32Array(graph.count);
  node.forEach((at, k) => (position[at] = k));
  const start = sums(near.map((list) => list.length));
  const builder = new Builder(position, start, near);
  graph.a.forEach((a, n) => builder.add(a, graph.b[n] ?? 0));
  const pair = near.map((list) => {
    const first = builder.count;
    list.forEach((i, at) => list.slice(at + 1).forEach((j) => builder.add(i, j)));
    return first;
  });
  return {
    node,
    start,
    far: Int32Array.from(near.flat()),
    parent: Int32Array.from(near, (list) => firstOf(list, position)),
    pair: Int32Array.from(pair),
    ...builder.feeds(graph.a.length)
  };
}

const firstOf = (list: readonly number[], position: Int32Array): number =>
  list.length === 0 ? -1 : Math.min(...list.map((at) => position[at] ?? 0));

/** 0, then the running sums. */
function sums(lengths: readonly number[]): Int32Array {
  const all = new Int32Array(lengths.length + 1);
  lengths.forEach((length, n) => (all[n + 1] = (all[n] ?? 0) + length));
  return all;
}

/** Assigns contributions to slots. */
class Builder {
  private readonly slots: ReadonlyMap<number, number>[];
  private readonly slot: number[] = [];
  private readonly sense: number[] = [];
  private readonly at: number[] = [];

  constructor(
    private readonly position: Int32Array,
    private readonly start: Int32Array,
    near: readonly (readonly number[])[]
  ) {
    this.slots = near.map((list, k) => new Map(list.map((at, i) => [at, (start[k] ?? 0) + i])));
  }

  get count(): number {
    return this.slot.length;
  }

  add(i: number, j: number): void {
    const [pi, pj] = [this.position[i] ?? 0, this.position[j] ?? 0];
    const first = pi < pj;
    const owner = first ? pi : pj;
    this.at.push(i === j ? -1 : owner);
    this.slot.push(i === j ? -1 : (this.slots[owner]?.get(first ? j : i) ?? -1));
    this.sense.push(i === j ? 0 : first ? 1 : -1);
  }

  feeds(branches: number): Pick<Pattern, 'feed' | 'feedStart' | 'sense' | 'owner'> {
    const lists: number[][] = Array.from({ length: this.start.at(-1) ?? 0 }, () => []);
    this.slot.forEach((s, n) => lists[s]?.push(n));
    return {
      feedStart: sums(lists.map((list) => list.length)),
      feed: Int32Array.from(lists.flat()),
      sense: Int8Array.from(this.sense),
      owner: Int32Array.from(this.at.slice(0, branches))
    };
  }
}
