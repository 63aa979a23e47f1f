import { unknownNode } from './errors';
import { nodesOf } from './groups';
import { modelOf } from './kinds';
import type { Circuit, Element } from './kinds';

/** One element of a path, walked from one of its nodes to the other. */
export interface TraceStep {
  readonly id: string;
  readonly from: string;
  readonly to: string;
}

/** How two nodes are joined, or what keeps them apart. */
export type Trace =
  | { readonly joined: true; readonly path: readonly TraceStep[] }
  | {
      readonly joined: false;
      readonly path: readonly TraceStep[];
      readonly breaks: readonly string[];
    };

/** What a trace may not use. */
export interface TraceOptions {
  readonly avoid?: (element: Element) => boolean;
}

interface Edge {
  readonly element: Element;
  readonly to: string;
  readonly open: boolean;
}

/** How a node was reached: from where, through what, past how many elements. */
interface Reached {
  readonly via: Edge | undefined;
  readonly from: string;
  readonly hops: number;
}

/**
 * The shortest conducting path between two nodes, or the fewest open switches that would make one.
 *
 * Every element conducts but an open switch and a current source; a diode counts both ways, as it
 * does for islands. When nothing could join the nodes, `path` and `breaks` are empty.
 *
 * Errors: a `CircuitError` for an unknown node.
 * Source: 0–1 breadth-first search, e.g. Cormen et al., Introduction to Algorithms, ch. 20.
 *
 * @example
 * trace(circuit, 'controller +', 'rail A feed', { avoid: (e) => e.kind === 'motor' })
 * // { joined: false, path: […], breaks: ['toggle A'] }
 */
export function trace(
  circuit: Circuit,
  from: string,
  to: string,
  options: TraceOptions = {}
): Trace {
  const nodes = nodesOf(circuit);
  for (const node of [from, to]) if (!nodes.has(node)) unknownNode(node);
  const edges = edgesOf(circuit, options.avoid ?? (() => false));
  const path = pathTo(to, search(edges, from, to));
  const breaks = path.filter(({ open }) => open).map(({ id }) => id);
  const steps = path.map(({ id, from: start, to: end }) => ({ id, from: start, to: end }));
  const joined = breaks.length === 0 && (steps.length > 0 || from === to);
  return joined ? { joined, path: steps } : { joined, path: steps, breaks };
}

function edgesOf(circuit: Circuit, avoid: (element: Element) => boolean): Map<string, Edge[]> {
  const edges = new Map<string, Edge[]>();
  const add = (from: string, edge: Edge): void => {
    const list = edges.get(from);
    if (list === undefined) edges.set(from, [edge]);
    else list.push(edge);
  };
  for (const element of circuit.elements) {
    const { kind, a, b } = element;
    if (kind === 'current' || avoid(element)) continue;
    const open = modelOf(element).ohms === Infinity;
    add(a, { element, to: b, open });
    add(b, { element, to: a, open });
  }
  return edges;
}

/** Levels by open switches passed; within a level, breadth first by elements passed. */
function search(
  edges: ReadonlyMap<string, readonly Edge[]>,
  from: string,
  to: string
): Map<string, Reached> {
  const done = new Map<string, Reached>();
  let level = new Map<string, Reached>([[from, { via: undefined, from, hops: 0 }]]);
  while (level.size > 0 && !done.has(to)) {
    const beyond = new Map<string, Reached>();
    spread(edges, level, done, beyond);
    level = beyond;
  }
  return done;
}

/** Settles every node that a level reaches without another open switch; notes those beyond one. */
function spread(
  edges: ReadonlyMap<string, readonly Edge[]>,
  level: ReadonlyMap<string, Reached>,
  done: Map<string, Reached>,
  beyond: Map<string, Reached>
): void {
  const queue: [string, Reached][][] = [];
  const push = (node: string, reached: Reached): void => {
    (queue[reached.hops] ??= []).push([node, reached]);
  };
  for (const [node, reached] of level) push(node, reached);
  for (let hops = 0; hops < queue.length; hops++) {
    for (const [node, reached] of queue[hops] ?? []) {
      if (done.has(node)) continue;
      done.set(node, reached);
      for (const via of edges.get(node) ?? []) {
        if (done.has(via.to)) continue;
        const next = { via, from: node, hops: hops + 1 };
        if (!via.open) push(via.to, next);
        else if ((beyond.get(via.to)?.hops ?? Infinity) > next.hops) beyond.set(via.to, next);
      }
    }
  }
}

function pathTo(to: string, done: ReadonlyMap<string, Reached>): (TraceStep & { open: boolean })[] {
  const path: (TraceStep & { open: boolean })[] = [];
  let at = to;
  for (let reached = done.get(at); reached?.via !== undefined; reached = done.get(at)) {
    path.push({ id: reached.via.element.id, from: reached.from, to: at, open: reached.via.open });
    at = reached.from;
  }
  return path.reverse();
}
