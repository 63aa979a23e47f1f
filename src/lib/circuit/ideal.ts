import { CircuitError } from './errors';
import { nameOf } from './kinds';
import type { Netlist } from './netlist';

/**
 * Nodes held together by elements without resistance, as one node with known differences.
 *
 * Each group is a tree: `order` lists its nodes parent first, and `link` the element from each node
 * to its parent, −1 for the group's first node.
 */
export interface Ideal {
  readonly count: number;
  /** The group of each node; ground is in group 0. */
  readonly group: Int32Array;
  readonly order: Int32Array;
  readonly link: Int32Array;
  readonly parent: Int32Array;
}

/**
 * Gathers the nodes that `isIdeal` elements hold together.
 *
 * Errors: a `CircuitError` when they make a loop: what flows around it is then not determined.
 */
export function idealOf(netlist: Netlist, isIdeal: (e: number) => boolean): Ideal {
  const count = netlist.nodes.size;
  const links: number[][] = Array.from({ length: count }, () => []);
  const { a, b } = netlist;
  netlist.elements.forEach((_, e) => {
    if (!isIdeal(e)) return;
    links[a[e] ?? 0]?.push(e);
    links[b[e] ?? 0]?.push(e);
  });
  const group = new Int32Array(count).fill(-1);
  const link = new Int32Array(count).fill(-1);
  const parent = new Int32Array(count).fill(-1);
  const order: number[] = [];
  let groups = 0;
  for (let root = 0; root < count; root++) {
    if ((group[root] ?? 0) >= 0) continue;
    group[root] = groups;
    order.push(root);
    for (let head = order.length - 1; head < order.length; head++) {
      const at = order[head] ?? 0;
      for (const e of links[at] ?? []) {
        if (e === link[at]) continue;
        const next = (a[e] === at ? b[e] : a[e]) ?? 0;
        if (group[next] === groups) loop(netlist, e);
        group[next] = groups;
        link[next] = e;
        parent[next] = at;
        order.push(next);
      }
    }
    groups++;
  }
  return { count: groups, group, order: Int32Array.from(order), link, parent };
}

function loop({ elements }: Netlist, e: number): never {
  const element = elements[e];
  throw new CircuitError({
    code: 'loop',
    where: element === undefined ? 'Circuit' : nameOf(element),
    met: '0 Ω, and it closes a loop in which nothing else has resistance',
    allowed: 'What flows around it is not determined: give ohms above 0.',
    field: 'ohms'
  });
}

/** Potential of each node against its group, V, written into `offset`. */
export function idealOffsets(netlist: Netlist, ideal: Ideal, offset: Float64Array): void {
  for (const at of ideal.order) {
    const e = ideal.link[at] ?? -1;
    const up = offset[ideal.parent[at] ?? -1] ?? 0;
    const emf = netlist.emf[e] ?? 0;
    offset[at] = e < 0 ? 0 : up + (netlist.a[e] === at ? emf : -emf);
  }
}
