import { describe, expect, test } from 'vitest';
import { CircuitError, solve } from '../../src/lib/circuit';
import type { Circuit, Solution } from '../../src/lib/circuit';
import { network } from './networks';
import { exactly } from './reference';
import { yard } from './yards';

/** Errors against the exact solution, as shares of what is allowed: volts and amperes. */
interface Worst {
  circuits: number;
  nodes: number;
  unsolvable: number;
  singular: number;
  volts: number;
  amps: number;
}

const voltsAllowed = 1e-12;
const ampsAllowed = { rel: 1e-6, floor: 1e-9 };

function compare(circuit: Circuit, worst: Worst): void {
  const solution = solvable(circuit);
  if (solution === undefined) {
    worst.unsolvable++;
    return;
  }
  const exact = exactly(circuit, solution);
  if (exact === undefined) {
    worst.singular++;
    return;
  }
  worst.circuits++;
  const highest = Math.max(1, ...[...exact.volts.values()].map(Math.abs));
  for (const [node, first] of exact.island) {
    worst.nodes++;
    const off = Math.abs((solution.between(node, first) ?? NaN) - (exact.volts.get(node) ?? NaN));
    worst.volts = Math.max(worst.volts, off / highest);
    expect(off, `node ${node}`).toBeLessThanOrEqual(voltsAllowed * highest);
  }
  const apart = [...exact.island].filter(([, first]) => first !== circuit.ground);
  expect([...solution.floating].sort()).toEqual(apart.map(([node]) => node).sort());
  for (const [id, amps] of exact.amps) {
    const off = Math.abs(solution.amps(id) - amps);
    const allowed = Math.max(ampsAllowed.rel * Math.abs(amps), ampsAllowed.floor);
    worst.amps = Math.max(worst.amps, (off / allowed) * ampsAllowed.rel);
    expect(off, id).toBeLessThanOrEqual(allowed);
  }
}

/** Undefined for a circuit that has no solution: loops of 0 Ω, currents without a way back. */
function solvable(circuit: Circuit): Solution | undefined {
  try {
    return solve(circuit);
  } catch (error) {
    if (error instanceof CircuitError && ['loop', 'way-back'].includes(error.code))
      return undefined;
    throw error;
  }
}

const fresh = (): Worst => ({
  circuits: 0,
  nodes: 0,
  unsolvable: 0,
  singular: 0,
  volts: 0,
  amps: 0
});

function report(what: string, worst: Worst): void {
  const { circuits, nodes, volts, amps, unsolvable, singular } = worst;
  console.info(
    `${what}: ${String(circuits)} circuits, ${String(nodes)} nodes compared; worst error ` +
      `${volts.toExponential(1)} of max(1 V, largest), currents ${amps.toExponential(1)} relative; ` +
      `left out: ${String(unsolvable)} without a solution, ${String(singular)} singular`
  );
}

describe('solve(circuit) against 300-digit arithmetic', { timeout: 60_000 }, () => {
  test('linear networks from 1 mΩ to 10 MΩ', () => {
    const worst = fresh();
    const kinds = ['resistor', 'resistor', 'source', 'switch', 'motor', 'current'] as const;
    for (let seed = 1; seed <= 300; seed++) {
      const [nodes, elements] = [3 + (seed % 8), 4 + (seed % 17)];
      compare(network({ seed, nodes, elements, kinds, ideal: 0.15 }), worst);
    }
    report('Linear networks', worst);
    expect(worst.circuits).toBeGreaterThan(200);
  });

  test('networks with diodes and limits', () => {
    const worst = fresh();
    const kinds = ['resistor', 'source', 'switch', 'diode', 'motor'] as const;
    for (let seed = 1; seed <= 200; seed++) {
      const [nodes, elements] = [3 + (seed % 6), 4 + (seed % 13)];
      compare(network({ seed, nodes, elements, kinds, limited: 0.4 }), worst);
    }
    report('Networks with bends', worst);
    expect(worst.circuits).toBeGreaterThan(120);
  });

  test('yards of up to 12 and 6 roads in random scenes with random faults', () => {
    const worst = fresh();
    for (let seed = 1; seed <= 150; seed++) {
      const [deck, stabling] = [1 + (seed % 12), seed % 7];
      const way = (['chain', 'ring', 'star'] as const)[seed % 3] ?? 'chain';
      const faults = seed % 4;
      compare(yard({ seed, deck, stabling, lamps: seed % 2 === 0, return: way, faults }), worst);
    }
    report('Yards', worst);
    expect(worst.circuits).toBe(150);
  });

  test('yards of 40 and 20 roads', () => {
    const worst = fresh();
    for (let seed = 1; seed <= 10; seed++) {
      compare(
        yard({ seed, deck: 40, stabling: 20, lamps: true, return: 'ring', faults: 3 }),
        worst
      );
    }
    report('Large yards', worst);
    expect(worst.circuits).toBe(10);
  });
});
