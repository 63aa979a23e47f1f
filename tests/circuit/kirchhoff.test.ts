import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solve } from '../../src/lib/circuit';
import type { Circuit, Element } from '../../src/lib/circuit';
import { anyCircuit, linearCircuit, renamed } from './random';

const runs = { numRuns: 300, seed: 20 };

/** Sum of currents out of each node, and the largest current. */
function balance(circuit: Circuit): { worst: number; largest: number } {
  const s = solve(circuit);
  const out = new Map<string, number>();
  let largest = 0;
  for (const { id, a, b } of circuit.elements) {
    const i = s.amps(id);
    largest = Math.max(largest, Math.abs(i));
    out.set(a, (out.get(a) ?? 0) + i);
    out.set(b, (out.get(b) ?? 0) - i);
  }
  return { worst: Math.max(...[...out.values()].map(Math.abs)), largest };
}

describe('solve(circuit), any circuit', () => {
  test('balances the current at every node to 1e-9 of the largest', () => {
    fc.assert(
      fc.property(anyCircuit, (circuit) => {
        const { worst, largest } = balance(circuit);
        expect(worst).toBeLessThanOrEqual(1e-9 * largest);
      }),
      runs
    );
  });

  test('balances power: what sources give, the rest takes', () => {
    fc.assert(
      fc.property(anyCircuit, (circuit) => {
        const s = solve(circuit);
        const powers = circuit.elements.map(({ id, a, b }) => (s.between(a, b) ?? 0) * s.amps(id));
        const total = powers.reduce((sum, p) => sum + p, 0);
        const gross = powers.reduce((sum, p) => sum + Math.abs(p), 0);
        expect(Math.abs(total)).toBeLessThanOrEqual(1e-9 * gross);
      }),
      runs
    );
  });

  test('meets the law of every resistor, motor and closed switch', () => {
    fc.assert(
      fc.property(anyCircuit, (circuit) => {
        const s = solve(circuit);
        for (const e of circuit.elements) {
          const v = s.between(e.a, e.b) ?? 0;
          if (e.kind === 'resistor') expect(Math.abs(v - e.ohms * s.amps(e.id))).toBeLessThan(1e-8);
          if (e.kind === 'motor') {
            expect(Math.abs(v - e.emf - e.ohms * s.amps(e.id))).toBeLessThan(1e-8);
          }
        }
      }),
      runs
    );
  });

  test('gives the same whatever the order of elements and the names of nodes', () => {
    fc.assert(
      fc.property(anyCircuit, fc.integer({ min: 1, max: 9 }), (circuit, turn) => {
        const other: Circuit = {
          ground: renamed(circuit.ground),
          elements: [...circuit.elements.slice(turn), ...circuit.elements.slice(0, turn)].map(
            (e): Element => ({ ...e, a: renamed(e.a), b: renamed(e.b) })
          )
        };
        const [one, two] = [solve(circuit), solve(other)];
        for (const { a } of circuit.elements) {
          const [v, w] = [one.volts(a), two.volts(renamed(a))];
          if (v === undefined || w === undefined) expect(v).toBe(w);
          else expect(Math.abs(v - w)).toBeLessThanOrEqual(1e-11 * Math.max(1, Math.abs(v)));
        }
      }),
      runs
    );
  });

  test('treats an open switch as one that is not there', () => {
    fc.assert(
      fc.property(anyCircuit, (circuit) => {
        const elements = circuit.elements.filter((e) => e.kind !== 'switch' || e.closed);
        const [one, two] = [solve(circuit), solve({ ground: circuit.ground, elements })];
        for (const { id } of elements) {
          const [i, j] = [one.amps(id), two.amps(id)];
          expect(Math.abs(i - j)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(i)));
        }
      }),
      runs
    );
  });
});

describe('solve(circuit), linear circuits', () => {
  test('is linear: doubling every source doubles every voltage', () => {
    fc.assert(
      fc.property(linearCircuit, (circuit) => {
        const elements = circuit.elements.map((e): Element => {
          if (e.kind === 'source') return { ...e, volts: 2 * e.volts };
          if (e.kind === 'motor') return { ...e, emf: 2 * e.emf };
          return e.kind === 'current' ? { ...e, amps: 2 * e.amps } : e;
        });
        const [one, two] = [solve(circuit), solve({ ground: circuit.ground, elements })];
        for (const { a } of circuit.elements) {
          const [v = 0, w = 0] = [one.volts(a), two.volts(a)];
          expect(Math.abs(2 * v - w)).toBeLessThanOrEqual(1e-11 * Math.max(1, Math.abs(w)));
        }
      }),
      runs
    );
  });
});
