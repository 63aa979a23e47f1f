import type { Circuit, Element, Solution } from '../../src/lib/circuit';
import { thermalVoltage } from '../../src/lib/tables';
import { abs, big, exp, over, times, toNumber } from './big';
import type { Big } from './big';

/** An exact solution: every node against the first node of its island, and every current. */
export interface Exact {
  readonly island: ReadonlyMap<string, string>;
  readonly volts: ReadonlyMap<string, number>;
  readonly amps: ReadonlyMap<string, number>;
}

const small = big(1e-60);

/**
 * A slow, separate solver: all of Kirchhoff's equations with every current an unknown, Gaussian
 * elimination with pivoting, Newton's method, all in 300-digit numbers.
 *
 * It begins at an approximate solution and ends where every equation holds to 60 digits; as every
 * element's law rises, there is only one such place. Undefined when its matrix is singular to 300
 * digits, which is where nothing but reversed junctions holds a node.
 */
export function exactly(circuit: Circuit, near: Solution): Exact | undefined {
  const system = new System(circuit, near);
  for (let step = 0; step < 12; step++) {
    const change = system.step();
    if (change === undefined) return undefined;
    if (change < small) return system.exact();
  }
  throw new Error('The exact solver did not converge: where it began was no solution.');
}

interface Law {
  /** The equation's value, and its slopes by V(a), V(b), junction volts and current. */
  readonly value: Big;
  readonly slopes: readonly [a: Big, b: Big, junction: Big, current: Big];
}

class System {
  private readonly island: Map<string, string>;
  private readonly volts = new Map<string, Big>();
  private readonly amps: Big[];
  private readonly junction: Big[];
  private readonly unknown = new Map<string, number>();

  constructor(
    private readonly circuit: Circuit,
    near: Solution
  ) {
    this.island = islandsOf(circuit);
    for (const [node, first] of this.island) {
      this.volts.set(node, big(near.between(node, first) ?? NaN));
      // Currents and junctions come first: eliminated first, they leave the nodal equations.
      if (node !== first) this.unknown.set(node, 2 * circuit.elements.length + this.unknown.size);
    }
    this.amps = circuit.elements.map(({ id }) => big(near.amps(id)));
    this.junction = circuit.elements.map((e, n) =>
      e.kind === 'diode' ? this.across(e) - times(big(e.ohms), this.amps[n] ?? 0n) : 0n
    );
  }

  exact(): Exact {
    const { elements } = this.circuit;
    return {
      island: this.island,
      volts: new Map([...this.volts].map(([node, v]) => [node, toNumber(v)])),
      amps: new Map(elements.map(({ id }, n) => [id, toNumber(this.amps[n] ?? 0n)]))
    };
  }

  /** One step of Newton's method; the largest change, V or A, or undefined when singular. */
  step(): Big | undefined {
    const { elements } = this.circuit;
    const size = this.unknown.size + 2 * elements.length;
    const rows = Array.from({ length: size }, () => new Map<number, Big>());
    const right = Array.from({ length: size }, () => 0n);
    elements.forEach((e, n) => this.enter(e, n, rows, right));
    const change = eliminated(rows, right);
    if (change === undefined) return undefined;
    for (const [node, at] of this.unknown) {
      this.volts.set(node, (this.volts.get(node) ?? 0n) + (change[at] ?? 0n));
    }
    elements.forEach((_, n) => {
      this.amps[n] = (this.amps[n] ?? 0n) + (change[n] ?? 0n);
      this.junction[n] = (this.junction[n] ?? 0n) + (change[elements.length + n] ?? 0n);
    });
    return change.reduce((most, one) => (abs(one) > most ? abs(one) : most), 0n);
  }

  private across({ a, b }: Element): Big {
    return (this.volts.get(a) ?? 0n) - (this.volts.get(b) ?? 0n);
  }

  /** An element's current leaves a and enters b; its law and its junction's are two more rows. */
  private enter(e: Element, n: number, rows: Map<number, Big>[], right: Big[]): void {
    const [current, junction] = [n, this.circuit.elements.length + n];
    const [a, b] = [this.unknown.get(e.a), this.unknown.get(e.b)];
    const add = (row: number, column: number | undefined, value: Big): void => {
      if (column === undefined || value === 0n) return;
      rows[row]?.set(column, (rows[row]?.get(column) ?? 0n) + value);
    };
    const take = (row: number, value: Big): void => {
      right[row] = (right[row] ?? 0n) - value;
    };
    const i = this.amps[n] ?? 0n;
    if (a !== undefined) {
      add(a, current, big(1));
      take(a, i);
    }
    if (b !== undefined) {
      add(b, current, big(-1));
      take(b, -i);
    }
    const laws: [number, Law][] = [
      [current, this.law(e, n)],
      [junction, this.junctionLaw(e, n)]
    ];
    for (const [row, { value, slopes }] of laws) {
      [a, b, junction, current].forEach((column, s) => add(row, column, slopes[s] ?? 0n));
      take(row, value);
    }
  }

  /** An element's law, as something that must be 0. */
  private law(e: Element, n: number): Law {
    const v = this.across(e);
    const i = this.amps[n] ?? 0n;
    const one = big(1);
    const series = (ohms: number, emf: Big): Law => ({
      value: v - emf - times(big(ohms), i),
      slopes: [one, -one, 0n, -big(ohms)]
    });
    const fixed = (amps: Big): Law => ({ value: i - amps, slopes: [0n, 0n, 0n, one] });
    if (e.kind === 'current') return fixed(big(e.amps));
    if (e.kind === 'switch') return e.closed ? series(e.ohms, 0n) : fixed(0n);
    if (e.kind === 'resistor') return series(e.ohms, 0n);
    if (e.kind === 'motor') return series(e.ohms, big(e.emf));
    if (e.kind === 'source') {
      const free = e.ohms === 0 ? i : over(v - big(e.volts), big(e.ohms));
      const limit = e.limit === undefined ? undefined : big(e.limit);
      if (limit !== undefined && abs(free) > limit) return fixed(free > 0n ? limit : -limit);
      return series(e.ohms, big(e.volts));
    }
    const law = series(e.ohms, this.junction[n] ?? 0n);
    return { value: law.value, slopes: [one, -one, -one, -big(e.ohms)] };
  }

  private junctionLaw(e: Element, n: number): Law {
    const one = big(1);
    const vj = this.junction[n] ?? 0n;
    if (e.kind !== 'diode') return { value: vj, slopes: [0n, 0n, one, 0n] };
    const scale = times(big(e.ideality), big(thermalVoltage));
    const saturation = big(e.saturation);
    const steep = times(saturation, exp(over(vj, scale)));
    return {
      value: steep - saturation - (this.amps[n] ?? 0n),
      slopes: [0n, 0n, over(steep, scale), -one]
    };
  }
}

/** The first node of each node's island, ground before all others. */
export function islandsOf({ ground, elements }: Circuit): Map<string, string> {
  const nodes = [...new Set([ground, ...elements.flatMap(({ a, b }) => [a, b])])];
  const first = new Map<string, string>();
  for (const start of nodes) {
    if (first.has(start)) continue;
    first.set(start, start);
    const queue = [start];
    for (const at of queue) {
      for (const e of elements) {
        if (e.kind === 'current' || (e.kind === 'switch' && !e.closed)) continue;
        const next = e.a === at ? e.b : e.b === at ? e.a : at;
        if (first.has(next)) continue;
        first.set(next, start);
        queue.push(next);
      }
    }
  }
  return first;
}

/**
 * Gaussian elimination on sparse rows: the emptiest column first, its pivot in the shortest of the
 * rows whose number there is not tiny; 300 digits can spare the few that this costs.
 */
function eliminated(rows: Map<number, Big>[], right: Big[]): Big[] | undefined {
  const columns = Array.from(rows, () => new Set<number>());
  rows.forEach((row, r) => [...row.keys()].forEach((c) => columns[c]?.add(r)));
  const order: [row: number, column: number][] = [];
  const left = new Set(rows.keys());
  while (left.size > 0) {
    let column = -1;
    for (const c of left)
      if ((columns[c]?.size ?? 0) < (columns[column]?.size ?? Infinity)) column = c;
    left.delete(column);
    const pivot = pivotOf(rows, columns[column] ?? new Set(), column);
    if (pivot === undefined) return undefined;
    order.push([pivot, column]);
    for (const c of rows[pivot]?.keys() ?? []) columns[c]?.delete(pivot);
    for (const r of columns[column] ?? []) {
      const factor = over(rows[r]?.get(column) ?? 0n, rows[pivot]?.get(column) ?? 1n);
      for (const [c, x] of rows[pivot] ?? []) {
        if (c === column) continue;
        rows[r]?.set(c, (rows[r]?.get(c) ?? 0n) - times(factor, x));
        columns[c]?.add(r);
      }
      rows[r]?.delete(column);
      right[r] = (right[r] ?? 0n) - times(factor, right[pivot] ?? 0n);
    }
  }
  const x = Array<Big>(rows.length).fill(0n);
  for (const [row, column] of order.reverse()) {
    let sum = right[row] ?? 0n;
    for (const [c, value] of rows[row] ?? []) if (c !== column) sum -= times(value, x[c] ?? 0n);
    x[column] = over(sum, rows[row]?.get(column) ?? 1n);
  }
  return x;
}

const spare = 1n << 100n;

function pivotOf(
  rows: readonly Map<number, Big>[],
  holders: ReadonlySet<number>,
  column: number
): number | undefined {
  const value = (r: number): Big => abs(rows[r]?.get(column) ?? 0n);
  const most = [...holders].reduce((best, r) => (value(r) > best ? value(r) : best), 0n);
  const fit = [...holders].filter((r) => value(r) > 0n && value(r) * spare >= most);
  fit.sort((r, s) => (rows[r]?.size ?? 0) - (rows[s]?.size ?? 0));
  return fit[0];
}
