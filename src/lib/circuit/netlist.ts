import { nodesOf } from './groups';
import { modelOf } from './kinds';
import type { Circuit, Element } from './kinds';

/**
 * A circuit with nodes and elements as numbers, node 0 ground, and every element's model in arrays.
 *
 * An element without a limit has Infinity there; one without a junction has saturation 0.
 */
export class Netlist {
  readonly nodes: ReadonlyMap<string, number>;
  readonly ids: ReadonlyMap<string, number>;
  readonly elements: Element[];
  /** The two nodes of each element. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly ohms: Float64Array;
  readonly emf: Float64Array;
  readonly amps: Float64Array;
  readonly limit: Float64Array;
  readonly saturation: Float64Array;
  readonly scale: Float64Array;

  constructor(circuit: Circuit) {
    const { elements } = circuit;
    this.nodes = nodesOf(circuit);
    this.elements = [...elements];
    this.ids = new Map(elements.map(({ id }, e) => [id, e]));
    this.a = Int32Array.from(elements, ({ a }) => this.nodes.get(a) ?? 0);
    this.b = Int32Array.from(elements, ({ b }) => this.nodes.get(b) ?? 0);
    const numbers = (): Float64Array => new Float64Array(elements.length);
    [this.ohms, this.emf, this.amps] = [numbers(), numbers(), numbers()];
    [this.limit, this.saturation, this.scale] = [numbers(), numbers(), numbers()];
    elements.forEach((element, e) => this.put(e, element));
  }

  /** Gives element e new values; its kind and nodes stay. */
  put(e: number, element: Element): void {
    const { ohms, emf = 0, amps = 0, limit = Infinity, junction } = modelOf(element);
    this.elements[e] = element;
    this.ohms[e] = ohms;
    this.emf[e] = emf;
    this.amps[e] = amps;
    this.limit[e] = limit;
    this.saturation[e] = junction?.saturation ?? 0;
    this.scale[e] = junction?.scale ?? 0;
  }

  /** Has the element a law that is no straight line: a junction or a limit? */
  bends(e: number): boolean {
    return (this.saturation[e] ?? 0) > 0 || (this.limit[e] ?? Infinity) < Infinity;
  }

  drives(e: number): boolean {
    return this.elements[e]?.kind === 'current';
  }
}
