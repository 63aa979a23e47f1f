import { checkCircuit } from './check';
import { unknownElement, unknownNode } from './errors';
import type { Circuit } from './kinds';
import { netlistOf } from './netlist';
import { Network } from './network';

/** What a solved circuit says. */
export interface Solution {
  /** Potential of a node against ground, V; undefined when no conducting path leads to ground. */
  volts(node: string): number | undefined;
  /** V(a) − V(b), V; undefined when no conducting path joins the nodes. */
  between(a: string, b: string): number | undefined;
  /** Current through an element from a to b, A; 0 for an open switch. */
  amps(id: string): number;
  /** Nodes without a conducting path to ground. */
  readonly floating: readonly string[];
  /** Ids of sources at their current limit. */
  readonly limiting: readonly string[];
}

/**
 * Solves a circuit of resistors, sources, switches, diodes, motors and current sources on DC.
 *
 * Kirchhoff's laws at every node, each island by itself; nothing hidden joins islands.
 * Volts, ohms and amperes throughout; see each element kind for its law.
 *
 * Errors: a `CircuitError` naming element and field for a circuit that is malformed or has no
 * solution; one for a node or element that the circuit does not hold.
 *
 * @example
 * const s = solve({ ground: '0', elements: [
 *   { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5 },
 *   { kind: 'resistor', id: 'R1', a: 'p', b: '0', ohms: 23.5 } ] });
 * s.volts('p'); // 11.75
 * s.amps('R1'); // 0.5
 */
export function solve(circuit: Circuit): Solution {
  checkCircuit(circuit);
  const network = new Network(netlistOf(circuit));
  network.solve();
  return solutionOf(network);
}

function solutionOf(network: Network): Solution {
  const { nodes, ids, elements } = network.netlist;
  const { work, ideal, mode } = network;
  const index = (node: string): number => nodes.get(node) ?? unknownNode(node);
  const island = (node: number): number => work.island[ideal.group[node] ?? 0] ?? 0;
  const difference = (a: number, b: number): number | undefined =>
    island(a) === island(b) ? network.at(a) - network.at(b) : undefined;
  let currents: Float64Array | undefined;
  return {
    volts: (node) => difference(index(node), 0),
    between: (a, b) => difference(index(a), index(b)),
    amps: (id) => (currents ??= network.currents())[ids.get(id) ?? unknownElement(id)] ?? 0,
    floating: [...nodes].filter(([, at]) => island(at) !== island(0)).map(([node]) => node),
    limiting: elements.filter((_, e) => mode[e] !== 0).map(({ id }) => id)
  };
}
