import { describe, test } from 'vitest';
import { G, J, R, chain, solved } from '../circuit/build';
import { near } from '../circuit/near';

/** Sources name the volume and chapter of Lessons in Electric Circuits; numbers only. */
const book = { rel: 1e-3 };

describe('Divider Circuits (vol. I)', () => {
  test.each([
    [45, 2e-3, [10, 20, 15]],
    [180, 8e-3, [40, 80, 60]]
  ])('%d V over 5 k, 10 k and 7.5 k', (volts, amps, [first, second, third]) => {
    const s = solved(G('G', ['p', '0'], volts), ...chain(5e3, 10e3, 7.5e3));
    near(s.amps('R1'), amps, book);
    near(s.between('p', 'n1'), first ?? NaN, book);
    near(s.between('n1', 'n2'), second ?? NaN, book);
    near(s.volts('n2'), third ?? NaN, book);
  });
});

describe('Batteries and Power Systems (vol. I)', () => {
  test('10 V behind 0.2 Ω into 1 Ω, then into a short', () => {
    near(solved(G('G', ['p', '0'], 10, 0.2), R('R', ['p', '0'], 1)).amps('R'), 8.3333, book);
    near(-solved(G('G', ['0', '0'], 10, 0.2)).amps('G'), 50, book);
  });
});

describe('Network Analysis (vol. I)', () => {
  const two = (load: number) =>
    solved(
      G('B1', ['p', '0'], 28),
      R('R1', ['p', 'm'], 4),
      R('R2', ['m', '0'], load),
      R('R3', ['m', 'q'], 1),
      G('B2', ['q', '0'], 7)
    );

  test('two batteries and three resistors', () => {
    const s = two(2);
    near(s.amps('R1'), 5, book);
    near(s.amps('R2'), 4, book);
    near(s.amps('B2'), 1, book);
    near(s.volts('m'), 8, book);
    near(s.between('p', 'm'), 20, book);
    near(s.between('m', 'q'), 1, book);
  });

  test('their Thévenin and Norton equivalents', () => {
    near(two(1e12).volts('m'), 11.2, book);
    near(two(1e-9).amps('R2'), 14, book);
    near((two(1e12).volts('m') ?? NaN) / two(1e-9).amps('R2'), 0.8, book);
  });

  const bridge = [
    R('R1', ['1', '2'], 150),
    R('R2', ['1', '3'], 50),
    R('R3', ['2', '3'], 100),
    R('R4', ['2', '0'], 300),
    R('R5', ['3', '0'], 250)
  ];

  test('an unbalanced bridge on 24 V', () => {
    const s = solved(G('G', ['1', '0'], 24), ...bridge);
    const printed = { rel: 5e-4 };
    near(s.volts('2'), 17.6552, printed);
    near(s.volts('3'), 19.3103, printed);
    near(-s.amps('G'), 136.092e-3, printed);
    near(s.amps('R1'), 42.299e-3, printed);
    near(s.amps('R2'), 93.793e-3, printed);
    near(-s.amps('R3'), 16.552e-3, printed);
    near(s.amps('R4'), 58.851e-3, printed);
    near(s.amps('R5'), 77.241e-3, printed);
  });

  test('the same bridge fed by its current', () => {
    const s = solved(J('J', ['0', '1'], 0.136092), ...bridge);
    near(s.volts('1'), 24, { rel: 1e-4 });
    near(s.volts('2'), 17.655, { rel: 1e-4 });
    near(s.volts('3'), 19.31, { rel: 1e-4 });
  });

  test('node voltages with sources of opposite sign', () => {
    const s = solved(
      G('G1', ['p', '0'], 10, 2),
      R('R1', ['p', '0'], 4),
      R('R2', ['p', 'q'], 2.5),
      R('R3', ['q', '0'], 5),
      G('G2', ['q', '0'], -4, 1)
    );
    near(s.volts('p'), 3.809524, { abs: 1e-5 });
    near(s.volts('q'), -1.547619, { abs: 1e-5 });
  });
});
