import { describe, test } from 'vitest';
import { metals, wireOhmsPerMetre } from '../../src/lib/tables';
import { G, M, R, chain, solved } from '../circuit/build';
import { near } from '../circuit/near';

/** Sources name the module of OpenStax University Physics vol. 2; numbers only. */
const book = { rel: 1e-3 };
const power = (v: number | undefined, i: number): number => (v ?? NaN) * i;

describe('resistors in series and parallel, m58454', () => {
  test('five in series on 9 V', () => {
    const s = solved(G('G', ['p', '0'], 9), ...chain(20, 20, 20, 20, 10));
    near(-s.amps('G'), 0.1, book);
    near(s.between('p', 'n1'), 2, book);
    near(s.volts('n4'), 1, book);
    near(power(s.between('p', 'n1'), s.amps('R1')), 0.2, book);
    near(power(s.volts('n4'), s.amps('R5')), 0.1, book);
    near(power(s.volts('p'), -s.amps('G')), 0.9, book);
  });

  test('three in parallel on 3.00 V', () => {
    const s = solved(
      G('G', ['p', '0'], 3),
      R('R1', ['p', '0'], 1),
      R('R2', ['p', '0'], 2),
      R('R3', ['p', '0'], 2)
    );
    near(-s.amps('G'), 6, book);
    near(s.amps('R1'), 3, book);
    near(s.amps('R2'), 1.5, book);
    near(power(s.volts('p'), s.amps('R1')), 9, book);
    near(power(s.volts('p'), s.amps('R3')), 4.5, book);
  });

  test('two in series with two in parallel', () => {
    const s = solved(
      G('G', ['p', '0'], 50),
      R('R1', ['p', 'm'], 10),
      R('R2', ['m', 'k'], 10),
      R('R3', ['m', 'k'], 10),
      R('R4', ['k', '0'], 10)
    );
    near(s.amps('R1'), 2, book);
    near(50 / s.amps('R1'), 25, book);
    near(power(s.volts('p'), s.amps('R1')), 100, book);
  });

  test('lamps that dim when a motor starts (problem; answer computed)', () => {
    const lamp = 120 ** 2 / 75;
    const motor = 108 / (15 - 108 / lamp);
    const s = solved(
      G('G', ['p', '0'], 120),
      R('wire', ['p', 'm'], 0.8),
      R('lamp', ['m', '0'], lamp),
      R('motor', ['m', '0'], motor)
    );
    near(-s.amps('G'), 15, book);
    near(s.volts('m'), 108, book);
    near(power(s.volts('m'), s.amps('lamp')), 60.75, book);
    near(power(s.volts('m'), s.amps('motor')), 1559.25, book);
  });
});

describe('electromotive force, m58453', () => {
  const loaded = (ohms: number) => solved(G('G', ['p', '0'], 12, 0.1), R('R', ['p', '0'], ohms));

  test('terminal voltage at a light load (the book rounds to 11.90 V)', () => {
    near(loaded(10).amps('R'), 1.18812, book);
    near(loaded(10).volts('p'), 11.8812, book);
  });

  test('terminal voltage at a heavy load', () => {
    near(loaded(0.5).amps('R'), 20, book);
    near(loaded(0.5).volts('p'), 10, book);
    near(power(loaded(0.5).volts('p'), loaded(0.5).amps('R')), 200, book);
  });
});

describe("Kirchhoff's rules, m58455", () => {
  test('opposed batteries in one loop (10, 30 and 20 Ω, as in figure and powers)', () => {
    const s = solved(
      G('G1', ['p', '0'], 24),
      R('R1', ['p', 'q'], 10),
      R('R2', ['q', 'r'], 30),
      G('G2', ['r', 's'], 12),
      R('R3', ['s', '0'], 20)
    );
    near(s.amps('R1'), 0.2, book);
    near(power(s.between('p', 'q'), s.amps('R1')), 0.4, book);
    near(power(s.between('q', 'r'), s.amps('R2')), 1.2, book);
    near(power(s.between('s', '0'), s.amps('R3')), 0.8, book);
    near(power(s.between('r', 's'), s.amps('G2')), 2.4, book);
    near(power(s.volts('p'), -s.amps('G1')), 4.8, book);
  });

  test('four cells in a toy (problem; answers computed)', () => {
    const toy = (bad: number) =>
      solved(
        G('G1', ['a', '0'], 1.58, 0.02),
        G('G2', ['b', 'a'], 1.58, 0.02),
        G('G3', ['c', 'b'], 1.58, 0.02),
        G('G4', ['p', 'c'], 1.53, bad),
        R('load', ['p', '0'], 10)
      );
    near(toy(0.1).amps('load'), 0.617126, book);
    near(power(toy(0.1).volts('p'), toy(0.1).amps('load')), 3.80844, book);
    near(power(toy(17.98).volts('p'), toy(17.98).amps('load')), 0.5, book);
  });
});

describe('motors, m58481 and m58482', () => {
  test.each([
    [0, 120, 5760],
    [40, 20, 160]
  ])('coil of 0.400 Ω on 48.0 V at a back-EMF of %d V', (emf, amps, watts) => {
    const s = solved(G('G', ['p', '0'], 48), M('M', ['p', '0'], 0.4, emf));
    near(s.amps('M'), amps, book);
    near(s.amps('M') ** 2 * 0.4, watts, book);
  });

  test.each([
    [0, 2],
    [90, 0.5],
    [60, 1]
  ])('series motor, 50 Ω field and 10 Ω armature, at a back-EMF of %d V', (emf, amps) => {
    const s = solved(
      G('G', ['p', '0'], 120),
      R('field', ['p', 'm'], 50),
      M('M', ['m', '0'], 10, emf)
    );
    near(s.amps('M'), amps, book);
  });

  test.each([
    [108, 4],
    [0, 40]
  ])('series motor of 3.0 Ω on 120 V at %d V (problem; answers computed)', (emf, amps) => {
    near(solved(G('G', ['p', '0'], 120), M('M', ['p', '0'], 3, emf)).amps('M'), amps, book);
  });
});

describe('electrical power, m58734', () => {
  test('a winch: what is not lifted heats 1.667 Ω', () => {
    const ohms = 1.667;
    const lift = (4900 * 10) / 30;
    const s = solved(G('G', ['p', '0'], 115), M('M', ['p', '0'], ohms, lift / 20));
    near(s.amps('M'), 20, book);
    near(power(s.volts('p'), s.amps('M')), 2300, book);
    near(s.amps('M') ** 2 * ohms, 666.67, book);
    near(lift, 1633.33, book);
  });
});

describe('resistivity and resistance, m58731', () => {
  test.each([
    ['physics-text copper', 1.68e-8, 5e-3],
    ['physics-text steel', 20e-8, 1e-2],
    ['iron', 9.71e-8, 1e-2]
  ] as const)('%s', (metal, resistivity, rel) => {
    near(metals[metal].resistivity, resistivity, { rel });
  });

  test('5 m of 12 AWG (the book rounds to 0.025 Ω)', () => {
    near(5 * wireOhmsPerMetre('3.31 mm²', metals['physics-text copper'].resistivity), 0.02538, {
      rel: 5e-3
    });
    near(5 * wireOhmsPerMetre('AWG 12', metals['physics-text copper'].resistivity), 0.02538, {
      rel: 5e-3
    });
  });
});
