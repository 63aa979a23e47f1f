import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { solve } from '../../src/lib/circuit';
import type { Circuit, Element, Solution } from '../../src/lib/circuit';
import { anyCircuit, linearCircuit, renamed, resistorCircuit } from './random';

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

describe('solve(circuit), any circuit', { timeout: 60_000 }, () => {
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

describe('solve(circuit), linear circuits', { timeout: 60_000 }, () => {
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

  test('superposes: the volts of all sources are the sums of the volts of each', () => {
    fc.assert(
      fc.property(linearCircuit, (circuit) => {
        const alone = circuit.elements.flatMap((source) =>
          source.kind === 'source' || source.kind === 'motor' ? [onlyWith(circuit, source.id)] : []
        );
        const whole = solve(circuit);
        for (const { a } of circuit.elements) {
          const v = whole.volts(a);
          if (v === undefined) continue;
          const parts = alone.map((s) => s.volts(a) ?? NaN);
          const gross = parts.reduce((sum, part) => sum + Math.abs(part), 1);
          const off = Math.abs(v - parts.reduce((sum, part) => sum + part, 0));
          expect(off).toBeLessThanOrEqual(1e-11 * gross);
        }
      }),
      runs
    );
  });
});

/** The circuit with every EMF but one taken out. */
function onlyWith({ ground, elements }: Circuit, id: string): Solution {
  const quiet = elements.map((e): Element => {
    if (e.id === id) return e;
    if (e.kind === 'source') return { ...e, volts: 0 };
    return e.kind === 'motor' ? { ...e, emf: 0 } : e;
  });
  return solve({ ground, elements: quiet });
}

describe('solve(circuit), resistor networks', { timeout: 60_000 }, () => {
  const nodes = fc.constantFrom('0', 'n1', 'n2', 'n3', 'n4');
  const pair = fc.tuple(nodes, nodes).filter(([a, b]) => a !== b);
  const driven = (circuit: Circuit, [a, b]: [string, string]): Solution | undefined => {
    const test = solve({ ...circuit, elements: [...circuit.elements, open('probe', [a, b])] });
    if (test.between(a, b) === undefined) return undefined;
    return solve({
      ...circuit,
      elements: [...circuit.elements, { kind: 'current', id: 'J', a: b, b: a, amps: 1 }]
    });
  };
  const open = (id: string, [a, b]: [string, string]): Element => ({
    kind: 'switch',
    id,
    a,
    b,
    closed: false,
    ohms: 1
  });

  test('are reciprocal: a current here gives there what it gives here from there', () => {
    fc.assert(
      fc.property(resistorCircuit, pair, pair, (circuit, here, there) => {
        const [one, two] = [driven(circuit, here), driven(circuit, there)];
        if (one === undefined || two === undefined) return;
        const [v = 0, w = 0] = [one.between(...there), two.between(...here)];
        const scale = Math.abs(one.between(...here) ?? 0) + Math.abs(two.between(...there) ?? 0);
        expect(Math.abs(v - w)).toBeLessThanOrEqual(1e-11 * scale);
      }),
      runs
    );
  });

  test('are monotonic: a higher resistance anywhere never lowers what lies between two points', () => {
    fc.assert(
      fc.property(
        resistorCircuit,
        pair,
        fc.nat(),
        fc.double({ min: 1, max: 1e3, noNaN: true }),
        (circuit, here, at, factor) => {
          const n = at % circuit.elements.length;
          const higher = circuit.elements.map((e, m): Element =>
            m === n && e.kind === 'resistor' ? { ...e, ohms: e.ohms * factor } : e
          );
          const [before, after] = [
            driven(circuit, here),
            driven({ ...circuit, elements: higher }, here)
          ];
          const [r = 0, s = 0] = [before?.between(...here), after?.between(...here)];
          expect(s).toBeGreaterThanOrEqual(r * (1 - 1e-12));
        }
      ),
      runs
    );
  });
});

describe('solve(circuit), islands', { timeout: 60_000 }, () => {
  test('never leak: what goes on in one changes no bit of another', () => {
    fc.assert(
      fc.property(anyCircuit, anyCircuit, (one, two) => {
        const apart = two.elements.map((e): Element => ({
          ...e,
          id: `${e.id} apart`,
          a: renamed(e.a),
          b: renamed(e.b)
        }));
        const both = solve({ ground: one.ground, elements: [...one.elements, ...apart] });
        const alone = solve(one);
        for (const { a, b, id } of one.elements) {
          expect(both.volts(a)).toBe(alone.volts(a));
          expect(both.amps(id)).toBeCloseTo(alone.amps(id), 12);
          expect(both.between(b, renamed('0'))).toBeUndefined();
        }
      }),
      { ...runs, numRuns: 150 }
    );
  });
});
