import { describe, expect, test } from 'vitest';
import {
  atLoad,
  bestEfficiency,
  droppingOhms,
  motorFrom,
  nearest,
  nextAbove,
  revolutionsPerMinute,
  saturationFrom,
  metals,
  stallTorque,
  wireOhmsPerMetre
} from '../../src/lib/tables';
import { read } from '../../src/lib/yard';
import { D, G, J, M, R, chain, solved } from '../circuit/build';
import { near } from '../circuit/near';
import { moment } from '../yard/build';

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

describe('a yard whose return is a ring of 0.4 Ω', () => {
  /** Annealed copper of 1 mm²: 1.7241e-8 Ω·m / 1e-6 m². */
  const metres = (ohms: number) => ohms / 0.017241;

  test.each([
    [0.1, 'A', 36e-3],
    [0.25, 'A', 75e-3],
    [0.5, 'B', 100e-3],
    [0.75, 'C', 75e-3],
    [0.9, 'C', 36e-3]
  ])('a loco %d of the way round, on road %s, sees x(1 − x)·0.4 Ω', (x, road, ohms) => {
    const near0 = x === 0.5 ? 0.1 : Math.min(x, 1 - x);
    const wire = (length: number) => ({ size: '1 mm²', lengthM: metres(length) });
    const wires = { main: wire(near0 * 0.4), link: wire((0.4 - 2 * near0 * 0.4) / 2) };
    const { yard, scene } = moment(
      { deckRoads: 3, return: 'ring', plug: false, wires },
      { locos: { Heron: road }, switches: { [road]: true }, controller: 1 }
    );
    const { amps, between } = read(yard, scene);
    near((between(`return tag ${road}`, 'return') ?? NaN) / amps('Heron'), ohms, computed);
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

describe('an LED and its resistor: (V − Vf) / I, rounded by IEC 60063', () => {
  test.each([
    ['red', 12, 2, 10e-3, 1000, 1000, 1000, 10e-3, 100e-3],
    ['yellow', 12, 2.1, 15e-3, 660, 680, 680, 14.559e-3, 144.1e-3],
    ['white', 12, 3.2, 20e-3, 440, 470, 430, 18.723e-3, 164.8e-3],
    ['blue', 5, 3.2, 20e-3, 90, 100, 91, 18e-3, 32.4e-3],
    ['two red in series', 9, 3.8, 12e-3, 433.33, 470, 430, 11.064e-3, 57.53e-3],
    ['red, weak', 3.3, 1.9, 2e-3, 700, 820, 680, 1.7073e-3, 2.39e-3],
    ['red on 16 V', 16, 2, 8e-3, 1750, 1800, 1800, 7.7778e-3, 108.9e-3]
  ])('%s on %d V', (_, volts, forward, ...rest) => {
    const [target = NaN, ohms = NaN, above = NaN, close = NaN, amps = NaN, watts = NaN] = rest;
    const exact = droppingOhms(volts, forward, target);
    near(exact, ohms, computed);
    expect(nextAbove(exact, 'E12')).toBe(above);
    expect(nearest(exact, 'E24')).toBe(close);
    near((volts - forward) / above, amps, computed);
    near((volts - forward) ** 2 / above, watts, computed);
  });

  test('the red LED of the engine carries 10 mA at 2.0 V', () => {
    near(saturationFrom(2, 0.01), 1.587594e-19, closed);
  });
});

describe('a motor of 16 Ω that runs free at 12 000 rpm on 12 V and 0.06 A', () => {
  const a = motorFrom({ volts: 12, stallAmps: 0.75, freeAmps: 0.06, freeRpm: 12000 });
  const equations = { rel: 1e-4 };
  const circuit = (volts: number, emf: number): number =>
    solved(G('G', ['p', '0'], volts), M('M', ['p', '0'], a.ohms, emf)).amps('M');

  test('its constants', () => {
    near(a.constant, 0.0087854, equations);
    near(a.ohms, 16, equations);
    near(stallTorque(a, 12), 6.061893e-3, equations);
    near(a.startVolts, 0.96, equations);
    near(bestEfficiency(a, 12), (1 - Math.sqrt(0.06 / 0.75)) ** 2, equations);
  });

  test('with 2 mN·m on its shaft, in the equations and in the circuit', () => {
    const state = atLoad(a, 12, 2e-3);
    near(state.amps, 0.287652, equations);
    near(revolutionsPerMinute(state.speed), 8040.84, equations);
    near(state.emf, 7.397574, equations);
    near(state.output, 1.68407, equations);
    near(state.efficiency, 0.48788, equations);
    near(circuit(12, state.emf), state.amps, closed);
  });

  test.each([
    [3, 2217.39],
    [6, 5478.26],
    [9, 8739.13],
    [12, 12000]
  ])('free on %d V', (volts, rpm) => {
    const state = atLoad(a, volts);
    near(revolutionsPerMinute(state.speed), rpm, equations);
    near(circuit(volts, state.emf), 0.06, closed);
  });

  test('greatest output', () => {
    const state = atLoad(a, 12, a.constant * (0.405 - 0.06));
    near(state.amps, 0.405, equations);
    near(revolutionsPerMinute(state.speed), 6000, equations);
    near(state.output, 1.9044, equations);
    for (const torque of [0.9, 1.1]) {
      expect(atLoad(a, 12, a.constant * (0.405 - 0.06) * torque).output).toBeLessThan(state.output);
    }
  });

  test('held below its start voltage', () => {
    expect(atLoad(a, 0.9)).toEqual({ amps: 0.9 / 16, speed: 0, emf: 0, output: 0, efficiency: 0 });
    expect(() => motorFrom({ volts: 12, stallAmps: 0.05, freeAmps: 0.06, freeRpm: 1 })).toThrow(
      'Motor figures: 12, 0.05, 0.06, 1.'
    );
  });
});
