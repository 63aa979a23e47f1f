import { nodesOf } from './groups';
import { modelOf } from './kinds';
import type { Circuit, Element, Model } from './kinds';

/** A circuit with nodes and elements as numbers; node 0 is ground. */
export interface Netlist {
  readonly circuit: Circuit;
  readonly nodes: ReadonlyMap<string, number>;
  readonly ids: ReadonlyMap<string, number>;
  readonly elements: readonly Element[];
  /** The two nodes of each element. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly models: Model[];
}

/** Numbers the nodes and elements of a circuit that has been checked. */
export function netlistOf(circuit: Circuit): Netlist {
  const nodes = nodesOf(circuit);
  const { elements } = circuit;
  return {
    circuit,
    nodes,
    ids: new Map(elements.map(({ id }, e) => [id, e])),
    elements,
    a: Int32Array.from(elements, ({ a }) => nodes.get(a) ?? 0),
    b: Int32Array.from(elements, ({ b }) => nodes.get(b) ?? 0),
    models: elements.map(modelOf)
  };
}
