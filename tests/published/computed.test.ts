import { describe, expect, test } from 'vitest';
import { metals, wireOhmsPerMetre } from '../../src/lib/tables';
import { D, G, J, R, chain, solved } from '../circuit/build';
import { near } from '../circuit/near';

/**
 * Circuits worked out by closed forms, not published numbers. Diode and resistor:
 * I = (nVt/R)·W((Is·R/nVt)·exp((V + Is·R)/nVt)) − Is, Banwell and Jayakumar, Electron. Lett. 36
 * (2000) 291, at Vt = 25.852 mV.
 */
const closed = { rel: 1e-5 };
const computed = { rel: 1e-3 };

describe('a diode behind a resistor', () => {
  const lit = (volts: number, ohms: number, law: readonly [number, number]) =>
    solved(G('G', ['p', '0'], volts), R('R', ['p', 'k'], ohms), D('D', ['k', '0'], ...law));

  test.each([
    [5, 1000, 4.307456e-3, 0.692544],
    [0.7, 10, 2.331986e-3, 0.67668]
  ])('silicon on %d V through %d Ω', (volts, ohms, amps, drop) => {
    const s = lit(volts, ohms, [1e-14, 1]);
    near(s.amps('D'), amps, closed);
    near(s.volts('k'), drop, closed);
  });

  test('silicon turned round on 12 V blocks', () => {
    const s = lit(-12, 1000, [1e-14, 1]);
    expect(Math.abs(s.amps('D'))).toBeLessThan(1e-9);
    near(s.amps('D'), -1e-14, closed);
    near(s.volts('k'), -12, closed);
  });

  test.each([
    [12, 1000, 10e-3, 2],
    [12, 2200, 4.56389e-3, 1.959443],
    [5, 330, 9.105589e-3, 1.995156]
  ])('a red LED on %d V through %d Ω', (volts, ohms, amps, drop) => {
    const s = lit(volts, ohms, [1.587594e-19, 2]);
    near(s.amps('D'), amps, closed);
    near(s.volts('k'), drop, closed);
  });
});

describe('wires and rings', () => {
  test('a load spread along a feeder drops half of what it would at the end', () => {
    const taps = 2000;
    const perMetre = wireOhmsPerMetre('1.5 mm²', metals['annealed copper'].resistivity);
    near(perMetre, 0.011494, computed);
    const wires = chain(...Array<number>(taps).fill((perMetre * 10) / taps));
    const loads = Array.from({ length: taps - 1 }, (_, n) =>
      J(`J${String(n)}`, [`n${String(n + 1)}`, '0'], 1 / taps)
    );
    const ends = wires.map((wire) => (wire.b === '0' ? { ...wire, b: 'end' } : wire));
    const end = J('Jend', ['end', '0'], 1 / taps);
    const s = solved(G('G', ['p', '0'], 12), ...ends, ...loads, end);
    near(s.between('p', 'end'), 57.47e-3, computed);
    near(2 * (s.between('p', 'end') ?? NaN), 114.94e-3, computed);
  });

  test.each([
    [0.1, 36e-3],
    [0.25, 75e-3],
    [0.5, 100e-3],
    [0.75, 75e-3]
  ])('a ring return of 0.4 Ω tapped at %d of its length', (x, ohms) => {
    const s = solved(
      R('one way', ['t', '0'], x * 0.4),
      R('other way', ['t', '0'], (1 - x) * 0.4),
      J('J', ['0', 't'], 1)
    );
    near(s.volts('t'), ohms, computed);
  });
});

describe('whole roads', () => {
  test('one road through everything', () => {
    const extra = [0.1568, 0.02, 0.03, 0.03, 0.01, 0.01, 0.2352, 0.0266];
    near(0.5 + extra.reduce((sum, r) => sum + r, 0) + 0.2352, 1.2538, closed);
    const s = solved(G('G', ['p', '0'], 12, 0.5), ...chain(...extra, 0.2352, 24));
    near(-s.amps('G'), 0.475176, closed);
    near(s.volts('n9'), 11.404224, closed);
  });

  test('three roads on one return bus', () => {
    const road = (n: number) => [
      R(`feed ${String(n)}`, ['p', `f${String(n)}`], 0.3),
      R(`load ${String(n)}`, [`f${String(n)}`, `r${String(n)}`], 30)
    ];
    const s = solved(
      G('G', ['p', '0'], 12, 0.5),
      ...[1, 2, 3].flatMap(road),
      R('hop 1', ['r1', '0'], 0.1),
      R('hop 2', ['r2', 'r1'], 0.1),
      R('hop 3', ['r3', 'r2'], 0.1)
    );
    near(-s.amps('G'), 1.11572, closed);
    near(s.volts('p'), 11.44214, closed);
    near(s.between('f1', 'r1'), 11.218384, closed);
    near(s.between('f2', 'r2'), 11.144941, closed);
    near(s.between('f3', 'r3'), 11.10828, closed);
  });
});
