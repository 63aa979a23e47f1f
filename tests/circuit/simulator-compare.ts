import { expect } from 'vitest';
import type { Circuit, Solution } from '../../src/lib/circuit';
import { islandsOf } from './reference';
import type { Answer } from './simulator';
import type { SimulatorNetlist } from './simulator-netlist';

/** Both sides agree within these: volts of max(1 V, |V|), currents relative with a floor in A. */
export const allowed = { volts: 1e-6, amps: 1e-6, floor: 1e-9 };

/** Islands without ground at 0 V where a hand would put it: at the negative pole of their source. */
export function zeroOf({ ground, elements }: Circuit): Map<string, string> {
  const first = islandsOf({ ground, elements });
  const zero = new Map([[ground, ground]]);
  for (const e of elements) {
    const root = first.get(e.b) ?? '';
    if (e.kind === 'source' && !zero.has(root)) zero.set(root, e.b);
  }
  return new Map([...first].map(([node, root]) => [node, zero.get(root) ?? root]));
}

/** Largest errors as shares of what they are measured by. */
export interface Errors {
  readonly volts: number;
  readonly amps: number;
}

/** How far the engine is from the simulator; Infinity where the simulator has no finite number. */
export function errorsOf(
  solution: Solution,
  { volts, amps }: SimulatorNetlist,
  zero: ReadonlyMap<string, string>,
  answer: Answer
): Errors {
  let errors = { volts: 0, amps: 0 };
  const most = (a: number, b: number): number => Math.max(a, Number.isNaN(b) ? Infinity : b);
  for (const [node, name] of volts) {
    const expected = name === undefined ? 0 : (answer.get(name) ?? NaN);
    const off = Math.abs((solution.between(node, zero.get(node) ?? '') ?? NaN) - expected);
    errors = { ...errors, volts: most(errors.volts, off / Math.max(1, Math.abs(expected))) };
  }
  for (const [id, name] of amps) {
    const expected = answer.get(name) ?? NaN;
    const off = Math.abs(solution.amps(id) - expected);
    const size = Math.max(Math.abs(expected), allowed.floor / allowed.amps);
    errors = { ...errors, amps: most(errors.amps, off / size) };
  }
  return errors;
}

/** The simulator's own numbers put the same sources at their limits, and push as the engine says. */
export function expectLimits(
  { elements }: Circuit,
  solution: Solution,
  netlist: SimulatorNetlist,
  answer: Answer
): void {
  const volts = (node: string): number => answer.get(netlist.volts.get(node) ?? '') ?? 0;
  for (const e of elements) {
    if (e.kind !== 'source' || e.limit === undefined) continue;
    const push = e.volts - (volts(e.a) - volts(e.b));
    const rounding = allowed.volts * Math.max(1, Math.abs(e.volts));
    if (solution.limiting.includes(e.id)) {
      const past = -Math.sign(solution.amps(e.id)) * push - e.limit * e.ohms;
      expect(past, `${e.id} is at its limit`).toBeGreaterThan(-rounding);
    } else {
      const current = Math.abs(answer.get(netlist.amps.get(e.id) ?? '') ?? NaN);
      const most = e.limit * (1 + allowed.amps) + allowed.floor;
      expect(current, `${e.id} is below its limit`).toBeLessThanOrEqual(most);
    }
  }
}
