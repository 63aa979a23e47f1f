import { Sets } from './groups';
import type { Ideal } from './ideal';
import type { Netlist } from './netlist';
import type { Network } from './network';

/** Relative error up to which a current taken from a difference of volts is trusted. */
const trusted = 1e-12;

/**
 * Current of branch n from its a to its b by its own law, A; undefined where that is too rough.
 *
 * Ohm's law gives the current of a high resistance well and that of a low one badly, as a small
 * difference of volts.
 */
export function ownAmps(network: Network, n: number): number | undefined {
  const { branches, elimination } = network;
  const g = branches.g[n] ?? 0;
  const amps = g * network.across(n) + (branches.q[n] ?? 0);
  const rounding = 4 * Number.EPSILON * g * elimination.highest;
  return rounding <= trusted * Math.abs(amps) ? amps : undefined;
}

/**
 * Current of every element from a to b, A, balanced at every node.
 *
 * The best conductors form a tree whose currents follow from all the others by Kirchhoff's law,
 * which gives the current of a low resistance well where Ohm's does not.
 */
export function elementAmps(network: Network): Float64Array {
  const { netlist, chains, branches, ideal } = network;
  const amps = new Float64Array(netlist.elements.length);
  const g = new Float64Array(amps.length);
  chains.branch.forEach((n, e) => {
    if (n < 0) return;
    const law = (branches.g[n] ?? 0) * network.across(n) + (branches.q[n] ?? 0);
    amps[e] = (chains.sense[e] ?? 0) * law;
    g[e] = branches.g[n] ?? 0;
  });
  return balance(netlist, ideal, { g, amps });
}

interface Laws {
  readonly g: Float64Array;
  readonly amps: Float64Array;
}

function balance(netlist: Netlist, ideal: Ideal, { g, amps }: Laws): Float64Array {
  const { a, b } = netlist;
  const count = netlist.nodes.size;
  const best = Array.from(g.keys()).filter((e) => (g[e] ?? 0) > 0 && !isLink(ideal, netlist, e));
  best.sort((e, f) => (g[f] ?? 0) - (g[e] ?? 0));
  const links = Array.from(ideal.link).filter((e) => e >= 0);
  const sets = new Sets(count);
  const tree: number[][] = Array.from({ length: count }, () => []);
  const inTree = new Uint8Array(g.length);
  for (const e of [...links, ...best]) {
    const [from, to] = [a[e] ?? 0, b[e] ?? 0];
    if (!sets.join(from, to)) continue;
    inTree[e] = 1;
    tree[from]?.push(e);
    tree[to]?.push(e);
  }
  return follow(netlist, tree, inTree, amps);
}

function isLink({ link }: Ideal, { a, b }: Netlist, e: number): boolean {
  return link[a[e] ?? 0] === e || link[b[e] ?? 0] === e;
}

/** Currents of the tree's elements, from its leaves inwards. */
function follow(
  { a, b, nodes }: Netlist,
  tree: readonly (readonly number[])[],
  inTree: Uint8Array,
  known: Float64Array
): Float64Array {
  const amps = Float64Array.from(known);
  const out = new Float64Array(nodes.size);
  const add = (e: number, i: number): void => {
    out[a[e] ?? 0] = (out[a[e] ?? 0] ?? 0) + i;
    out[b[e] ?? 0] = (out[b[e] ?? 0] ?? 0) - i;
  };
  amps.forEach((i, e) => {
    if (inTree[e] === 0) add(e, i);
  });
  const { order, up } = walk(a, b, tree);
  for (let at = order.length - 1; at >= 0; at--) {
    const node = order[at] ?? 0;
    const e = up[node] ?? -1;
    if (e < 0) continue;
    const i = (a[e] === node ? -1 : 1) * (out[node] ?? 0);
    amps[e] = i;
    add(e, i);
  }
  return amps;
}

function walk(
  a: Int32Array,
  b: Int32Array,
  tree: readonly (readonly number[])[]
): { order: number[]; up: Int32Array } {
  const up = new Int32Array(tree.length).fill(-2);
  const order: number[] = [];
  for (let root = 0; root < tree.length; root++) {
    if (up[root] !== -2) continue;
    up[root] = -1;
    order.push(root);
    for (let head = order.length - 1; head < order.length; head++) {
      const at = order[head] ?? 0;
      for (const e of tree[at] ?? []) {
        const next = (a[e] === at ? b[e] : a[e]) ?? 0;
        if (up[next] !== -2) continue;
        up[next] = e;
        order.push(next);
      }
    }
  }
  return { order, up };
}
