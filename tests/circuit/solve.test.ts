import { describe, expect, test } from 'vitest';
import { solve } from '../../src/lib/circuit';
import type { Circuit } from '../../src/lib/circuit';
import { near } from './near';

const exact = { rel: 1e-12, abs: 1e-13 };

const sample: Circuit = {
  ground: '0',
  elements: [
    { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5, limit: 1.5 },
    { kind: 'switch', id: 'S1', a: 'p', b: 'q', closed: true, ohms: 0.02 },
    { kind: 'resistor', id: 'R1', a: 'q', b: '0', ohms: 24 },
    { kind: 'diode', id: 'D1', a: 'q', b: 'x', saturation: 1e-19, ideality: 2, ohms: 0 },
    { kind: 'motor', id: 'M1', a: 'x', b: '0', ohms: 28, emf: 3.2 },
    { kind: 'current', id: 'J1', a: '0', b: 'q', amps: 0.01 }
  ]
};

describe('solve(circuit)', () => {
  test('meets every element law and balances the sample circuit', () => {
    const s = solve(sample);
    const q = s.volts('q') ?? NaN;
    const x = s.volts('x') ?? NaN;
    near(s.amps('R1'), q / 24, exact);
    near(s.amps('M1'), (x - 3.2) / 28, exact);
    near(s.amps('D1'), 1e-19 * Math.expm1((q - x) / (2 * 0.025852)), { rel: 1e-10 });
    near(s.amps('G1'), ((s.volts('p') ?? NaN) - 12) / 0.5, { rel: 1e-12 });
    near(s.amps('S1') + s.amps('J1'), s.amps('R1') + s.amps('D1'), exact);
    expect(s.floating).toEqual([]);
    expect(s.limiting).toEqual([]);
  });

  test('holds a short at the limit and names the source', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5, limit: 1.5 },
        { kind: 'resistor', id: 'short', a: 'p', b: '0', ohms: 0.1 }
      ]
    });
    near(s.volts('p'), 0.15, exact);
    near(s.amps('G1'), -1.5, exact);
    expect(s.limiting).toEqual(['G1']);
  });

  test('holds an ideal source at its limit, and lets it go again', () => {
    const at = (ohms: number) =>
      solve({
        ground: '0',
        elements: [
          { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0, limit: 1.5 },
          { kind: 'resistor', id: 'R', a: 'p', b: '0', ohms }
        ]
      });
    near(at(4).volts('p'), 6, exact);
    expect(at(4).limiting).toEqual(['G1']);
    near(at(24).volts('p'), 12, exact);
    expect(at(24).limiting).toEqual([]);
  });

  test('lets the lower of two limits in series rule', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5, limit: 1.5 },
        { kind: 'source', id: 'G2', a: 'q', b: 'p', volts: 12, ohms: 0.5, limit: 1 },
        { kind: 'resistor', id: 'R', a: 'q', b: '0', ohms: 1 }
      ]
    });
    near(s.amps('R'), 1, exact);
    expect(s.limiting).toEqual(['G2']);
  });

  test('takes several sources into their limits and out again, each by itself', () => {
    const both = (ohms: number) =>
      solve({
        ground: '0',
        elements: [
          { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5, limit: 1 },
          { kind: 'source', id: 'G2', a: 'p', b: '0', volts: 11, ohms: 0.5, limit: 2 },
          { kind: 'resistor', id: 'R', a: 'p', b: '0', ohms }
        ]
      });
    near(both(0.1).volts('p'), 0.3, exact);
    expect(both(0.1).limiting).toEqual(['G1', 'G2']);
    near(both(10).volts('p'), 23 / 2.1, exact);
    expect(both(10).limiting).toEqual(['G1']);
  });

  test('shares the voltage of two equal limits in series, which nothing else decides', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5, limit: 1.5 },
        { kind: 'source', id: 'G2', a: 'q', b: 'p', volts: 12, ohms: 0.5, limit: 1.5 },
        { kind: 'resistor', id: 'short', a: 'q', b: '0', ohms: 0.1 }
      ]
    });
    expect(s.limiting).toEqual(['G1', 'G2']);
    near(s.amps('short'), 1.5, { rel: 1e-9 });
    near(s.volts('q'), 0.15, { rel: 1e-9 });
    near(s.volts('p'), 0.075, { rel: 1e-3 });
  });

  test('refuses a current forced through a source beyond its limit', () => {
    const forced = (amps: number) => () =>
      solve({
        ground: '0',
        elements: [
          { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5, limit: 1.5 },
          { kind: 'current', id: 'J1', a: 'p', b: '0', amps }
        ]
      });
    expect(forced(1)).not.toThrow();
    expect(forced(2)).toThrow('its current has no way back');
  });

  test('finds a current without a way back though a source elsewhere is at its limit', () => {
    const stray = () =>
      solve({
        ground: '0',
        elements: [
          { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5, limit: 1.5 },
          { kind: 'resistor', id: 'short', a: 'p', b: '0', ohms: 0.1 },
          { kind: 'switch', id: 'S', a: 'x', b: 'y', closed: true, ohms: 0.1 },
          { kind: 'current', id: 'J1', a: 'p', b: 'x', amps: 0.1 }
        ]
      });
    expect(stray).toThrow('Current source J1: its current has no way back.');
  });

  test('solves two controllers on one common return as one circuit', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0 },
        { kind: 'source', id: 'G2', a: 'q', b: '0', volts: 6, ohms: 0 },
        { kind: 'resistor', id: 'R1', a: 'p', b: 'c', ohms: 24 },
        { kind: 'resistor', id: 'R2', a: 'q', b: 'c', ohms: 12 },
        { kind: 'resistor', id: 'return', a: 'c', b: '0', ohms: 0.5 }
      ]
    });
    const common = (12 / 24 + 6 / 12) / (1 / 24 + 1 / 12 + 1 / 0.5);
    near(s.volts('c'), common, exact);
    near(s.amps('return'), common / 0.5, exact);
    near(s.amps('G1') + s.amps('G2') + s.amps('return'), 0, { abs: 1e-12 });
    expect(s.floating).toEqual([]);
  });

  test('keeps an open switch an exact nothing: a floating node has no volts', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0 },
        { kind: 'switch', id: 'S1', a: 'p', b: 'q', closed: false, ohms: 0.02 },
        { kind: 'resistor', id: 'R1', a: 'q', b: 'r', ohms: 24 }
      ]
    });
    expect(s.volts('q')).toBeUndefined();
    expect(s.between('p', 'r')).toBeUndefined();
    near(s.between('q', 'r'), 0, exact);
    expect(s.amps('S1')).toBe(0);
    expect(s.amps('R1')).toBe(0);
    expect(s.floating).toEqual(['q', 'r']);
  });

  test('solves an island without ground: a lamp supply of its own works', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0 },
        { kind: 'source', id: 'G2', a: 'l+', b: 'l-', volts: 12, ohms: 0.1 },
        { kind: 'resistor', id: 'R', a: 'l+', b: 'k', ohms: 1000 },
        { kind: 'diode', id: 'H1', a: 'k', b: 'l-', saturation: 1.587594e-19, ideality: 2, ohms: 0 }
      ]
    });
    near(s.amps('H1'), 0.01, { rel: 2e-4 });
    expect(s.volts('k')).toBeUndefined();
    expect(s.between('l+', 'p')).toBeUndefined();
    near(s.between('k', 'l-'), 2, { rel: 1e-4 });
  });

  test('carries a meter of 10 MΩ on a floating rail without a volt of error', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: 'n', volts: 12, ohms: 0.001 },
        { kind: 'resistor', id: 'R', a: 'p', b: 'n', ohms: 10 },
        { kind: 'resistor', id: 'meter', a: 'n', b: '0', ohms: 10e6 }
      ]
    });
    expect(s.volts('n')).toBe(0);
    near(s.volts('p'), (12 * 10) / 10.001, exact);
  });

  test('gives the current of 0 Ω elements from the balance of the others', () => {
    const s = solve({
      ground: '0',
      elements: [
        { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0 },
        { kind: 'switch', id: 'S1', a: 'p', b: 'q', closed: true, ohms: 0 },
        { kind: 'resistor', id: 'R1', a: 'q', b: '0', ohms: 24 },
        { kind: 'resistor', id: 'R2', a: 'p', b: '0', ohms: 12 }
      ]
    });
    near(s.amps('S1'), 0.5, exact);
    near(s.amps('G1'), -1.5, exact);
  });

  test('asked for what is not there, says so', () => {
    const s = solve(sample);
    expect(() => s.volts('nowhere')).toThrow("Circuit: no node 'nowhere'.");
    expect(() => s.between('p', 'nowhere')).toThrow("no node 'nowhere'");
    expect(() => s.amps('R9')).toThrow("Circuit: no element 'R9'.");
  });
});
