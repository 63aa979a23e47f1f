import { Stand } from './branches';
import { checkCircuit, checkField } from './check';
import { CircuitError, shown, unknownElement } from './errors';
import { iterate } from './iterate';
import { kindOf, nameOf } from './kinds';
import type { Circuit, Element } from './kinds';
import { Netlist } from './netlist';
import { Network } from './network';
import type { Solution } from './solution';
import { View } from './view';

/** New values for an element's fields; its kind, id and nodes stay. */
export interface Changes {
  readonly closed?: boolean;
  readonly ohms?: number;
  readonly volts?: number;
  readonly limit?: number | undefined;
  readonly emf?: number;
  readonly amps?: number;
  readonly saturation?: number;
  readonly ideality?: number;
}

/** A circuit ready to be changed and solved again and again. */
export interface Prepared {
  /** Gives an element new values for the next solve. */
  set(id: string, changes: Changes): void;
  /** Solves the circuit as it stands; what it returns shows the latest solve from then on. */
  solve(): Solution;
}

/**
 * Works out a circuit's structure and order once, to solve it often with other values.
 *
 * Memory is kept from solve to solve, and only what a change reaches is worked out again; the
 * numbers are the same as those of a circuit solved afresh. The solution is one object that always
 * shows the latest solve.
 *
 * Errors: a `CircuitError` as from `solve`, and for a change to a field that the element lacks.
 *
 * @example
 * const yard = prepare(circuit);
 * yard.set('toggle A', { closed: true });
 * yard.solve().amps('loco A'); // 0.42
 */
export function prepare(circuit: Circuit): Prepared {
  checkCircuit(circuit);
  return new Workbench(circuit);
}

class Workbench implements Prepared {
  private readonly netlist: Netlist;
  private stand: Stand;
  /** Undefined when the structure has to be worked out anew. */
  private network: Network | undefined;
  private view: View | undefined;

  constructor(circuit: Circuit) {
    this.netlist = new Netlist(circuit);
    this.stand = new Stand(this.netlist);
  }

  set(id: string, changes: Changes): void {
    const e = this.netlist.ids.get(id) ?? unknownElement(id);
    const element = this.netlist.elements[e] ?? unknownElement(id);
    checkChanges(element, changes);
    this.netlist.put(e, Object.assign({}, element, changes));
    if (this.netlist.limit[e] === Infinity) this.stand.mode[e] = 0;
    if (this.network?.touch(e) === false) this.network = undefined;
  }

  solve(): Solution {
    const network = this.network ?? new Network(this.netlist, this.stand);
    this.network = undefined;
    const clean = this.solved(network);
    this.network = clean;
    return (this.view ??= new View(clean)).show(clean);
  }

  private solved(network: Network): Network {
    try {
      return iterate(network, this.stand);
    } catch (error) {
      // What a failed search leaves behind is no place to begin the next one.
      this.stand = new Stand(this.netlist);
      throw error;
    }
  }
}

function checkChanges(element: Element, changes: Changes): void {
  const fields = kindOf(element.kind)?.fields ?? [];
  for (const name in changes) {
    const field = fields.find((one) => one.name === name);
    if (field === undefined) {
      throw new CircuitError({
        code: 'shape',
        where: nameOf(element),
        met: `no field ${shown(name)}`,
        allowed: `It has ${fields.map((one) => one.name).join(', ')}.`,
        field: name
      });
    }
    checkField((changes as Record<string, unknown>)[name], field, element);
  }
}
