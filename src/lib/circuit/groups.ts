import { unknownNode } from './errors';
import type { Circuit, Element } from './kinds';

/** Nodes joined to each other by chosen elements. */
export interface Groups {
  /** Every group, each in the order of the circuit. */
  readonly all: readonly (readonly string[])[];
  /** The group of a node, itself included. */
  of(node: string): readonly string[];
  /** Are both nodes in one group? */
  joined(a: string, b: string): boolean;
}

/** Disjoint sets of 0 … n−1 with path halving. */
export class Sets {
  private readonly parent: Int32Array;

  constructor(count: number) {
    this.parent = new Int32Array(count);
    this.part();
  }

  /** Parts all of them again. */
  part(): void {
    for (let item = 0; item < this.parent.length; item++) this.parent[item] = item;
  }

  find(item: number): number {
    const { parent } = this;
    let at = item;
    let up = parent[at] ?? at;
    while (up !== at) {
      const over = parent[up] ?? up;
      parent[at] = over;
      at = over;
      up = parent[at] ?? at;
    }
    return at;
  }

  /** Joins two sets under the first one's root; false when they were one already. */
  join(a: number, b: number): boolean {
    const [rootA, rootB] = [this.find(a), this.find(b)];
    if (rootA === rootB) return false;
    this.parent[rootB] = rootA;
    return true;
  }
}

/** The nodes of a circuit, ground first, then as the elements name them. */
export function nodesOf({ ground, elements }: Circuit): Map<string, number> {
  const nodes = new Map([[ground, 0]]);
  for (const { a, b } of elements) {
    if (!nodes.has(a)) nodes.set(a, nodes.size);
    if (!nodes.has(b)) nodes.set(b, nodes.size);
  }
  return nodes;
}

/**
 * The partition of a circuit's nodes into groups joined by the elements that `joins` accepts.
 *
 * Errors: a `CircuitError` when asked about a node that is not in the circuit.
 *
 * @example
 * const conductors = groups(circuit, (e) => e.kind === 'resistor' || (e.kind === 'switch' && e.closed));
 * conductors.joined('rail A feed', 'controller +')
 */
export function groups(circuit: Circuit, joins: (element: Element) => boolean): Groups {
  const nodes = nodesOf(circuit);
  const sets = new Sets(nodes.size);
  const index = (node: string): number => nodes.get(node) ?? unknownNode(node);
  for (const element of circuit.elements) {
    if (joins(element)) sets.join(index(element.a), index(element.b));
  }
  const byRoot = new Map<number, string[]>();
  for (const [node, at] of nodes) {
    const root = sets.find(at);
    const group = byRoot.get(root);
    if (group === undefined) byRoot.set(root, [node]);
    else group.push(node);
  }
  return {
    all: [...byRoot.values()],
    of: (node) => byRoot.get(sets.find(index(node))) ?? [],
    joined: (a, b) => sets.find(index(a)) === sets.find(index(b))
  };
}
