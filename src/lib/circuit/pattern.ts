/**
 * The order of elimination and everything that can be worked out before numbers are known.
 *
 * A slot is a pair of nodes that are joined when the first of the two is eliminated; it belongs to
 * that first node and points from it to the other. The slots of the node eliminated k-th are
 * start[k] … start[k+1]−1; the pairs of its slots, in order, feed the slots target[pair[k]] ….
 */
export interface Pattern {
  /** Node eliminated k-th; the last of each island remains and serves as its reference. */
  readonly node: Int32Array;
  readonly start: Int32Array;
  /** The node at the far end of each slot. */
  readonly far: Int32Array;
  readonly pair: Int32Array;
  readonly target: Int32Array;
  /** +1 when the pair (i, j) runs the way of its target slot, −1 when it runs against it. */
  readonly sense: Int8Array;
  /** Slot of each edge, −1 for one with both ends on one node. */
  readonly slot: Int32Array;
  readonly slotSense: Int8Array;
}

/** Edges between nodes 0 … count−1; edge e joins a[e] and b[e]. */
export interface Edges {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
}

/**
 * A fill-reducing order by least degree, with node 0 (ground) last.
 *
 * Source: minimum degree, e.g. Davis, Direct Methods for Sparse Linear Systems (2006), ch. 7.
 */
export function patternOf(edges: Edges): Pattern {
  const { node, near } = eliminateSymbolically(edges);
  const position = new Int32Array(edges.count);
  node.forEach((at, k) => (position[at] = k));
  const start = new Int32Array(edges.count + 1);
  near.forEach((list, k) => (start[k + 1] = (start[k] ?? 0) + list.length));
  const far = Int32Array.from(near.flat());
  const slots = near.map((list, k) => new Map(list.map((at, i) => [at, (start[k] ?? 0) + i])));
  const find = (i: number, j: number): { slot: number; sense: number } => {
    const [pi, pj] = [position[i] ?? 0, position[j] ?? 0];
    const first = pi < pj;
    return { slot: slots[first ? pi : pj]?.get(first ? j : i) ?? -1, sense: first ? 1 : -1 };
  };
  return { node, start, far, ...pairsOf(near, find), ...edgeSlots(edges, find) };
}

type Find = (i: number, j: number) => { slot: number; sense: number };

function pairsOf(
  near: readonly (readonly number[])[],
  find: Find
): Pick<Pattern, 'pair' | 'target' | 'sense'> {
  const [target, sense, pair]: [number[], number[], number[]] = [[], [], []];
  for (const list of near) {
    pair.push(target.length);
    list.forEach((i, at) => {
      for (const j of list.slice(at + 1)) {
        const found = find(i, j);
        target.push(found.slot);
        sense.push(found.sense);
      }
    });
  }
  return {
    pair: Int32Array.from(pair),
    target: Int32Array.from(target),
    sense: Int8Array.from(sense)
  };
}

function edgeSlots({ a, b }: Edges, find: Find): Pick<Pattern, 'slot' | 'slotSense'> {
  const slot = new Int32Array(a.length);
  const slotSense = new Int8Array(a.length);
  a.forEach((from, e) => {
    const to = b[e] ?? 0;
    const found = from === to ? { slot: -1, sense: 0 } : find(from, to);
    slot[e] = found.slot;
    slotSense[e] = found.sense;
  });
  return { slot, slotSense };
}

/** Eliminates the node of least degree again and again, joining its neighbours to each other. */
function eliminateSymbolically({ count, a, b }: Edges): { node: Int32Array; near: number[][] } {
  const links = Array.from({ length: count }, () => new Set<number>());
  a.forEach((from, e) => {
    const to = b[e] ?? 0;
    if (from === to) return;
    links[from]?.add(to);
    links[to]?.add(from);
  });
  const node = new Int32Array(count);
  const near: number[][] = [];
  const queue = new DegreeQueue(links);
  for (let k = 0; k < count; k++) {
    const at = k === count - 1 ? 0 : queue.take();
    const list = [...(links[at] ?? [])];
    node[k] = at;
    near.push(list);
    for (const i of list) {
      links[i]?.delete(at);
      for (const j of list) if (i !== j) links[i]?.add(j);
    }
    for (const i of list) queue.put(i);
  }
  return { node, near };
}

/** Nodes other than ground by degree; stale entries are skipped when met. */
class DegreeQueue {
  private readonly buckets: number[][] = [];
  private readonly taken: Uint8Array;
  private least = 0;

  constructor(private readonly links: readonly ReadonlySet<number>[]) {
    this.taken = new Uint8Array(links.length);
    for (let at = links.length - 1; at > 0; at--) this.put(at);
  }

  put(at: number): void {
    if (at === 0) return;
    const degree = this.links[at]?.size ?? 0;
    (this.buckets[degree] ??= []).push(at);
    this.least = Math.min(this.least, degree);
  }

  take(): number {
    for (; this.least < this.buckets.length; this.least++) {
      const bucket = this.buckets[this.least] ?? [];
      for (let at = bucket.pop(); at !== undefined; at = bucket.pop()) {
        if (this.taken[at] === 1 || this.links[at]?.size !== this.least) continue;
        this.taken[at] = 1;
        return at;
      }
    }
    return 0;
  }
}
