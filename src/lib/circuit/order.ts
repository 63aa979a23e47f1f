import type { Graph } from './pattern';

/** Nodes in the order of elimination, and what each is joined to when its turn comes. */
export interface Order {
  readonly node: Int32Array;
  readonly near: readonly number[][];
}

/**
 * Eliminates the node of least degree again and again, joining its neighbours to each other.
 *
 * Ground, node 0, comes last.
 *
 * Source: minimum degree, e.g. Davis, Direct Methods for Sparse Linear Systems (2006), ch. 7.
 */
export function leastDegreeFirst({ count, a, b }: Graph): Order {
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

/** How many nodes of least degree are compared at a time. */
const looks = 12;

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

  /** Of the nodes of least degree that come to hand, the one that joins the fewest anew. */
  take(): number {
    for (; this.least < this.buckets.length; this.least++) {
      const bucket = this.buckets[this.least] ?? [];
      const found: number[] = [];
      let best = -1;
      let bestFill = Infinity;
      while (bucket.length > 0 && found.length < looks && bestFill > 0) {
        const at = bucket.pop() ?? 0;
        if (this.taken[at] === 1 || this.links[at]?.size !== this.least || found.includes(at))
          continue;
        found.push(at);
        const fill = this.fill(at);
        if (fill < bestFill) [best, bestFill] = [at, fill];
      }
      for (const at of found.reverse()) if (at !== best) bucket.push(at);
      if (best < 0) continue;
      this.taken[best] = 1;
      return best;
    }
    return 0;
  }

  private fill(at: number): number {
    const list = [...(this.links[at] ?? [])];
    let fill = 0;
    for (const [n, i] of list.entries()) {
      for (const j of list.slice(n + 1)) if (this.links[i]?.has(j) === false) fill++;
    }
    return fill;
  }
}
