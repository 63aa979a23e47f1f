import { describe, expect, test } from 'vitest';
import {
  atTemperature,
  circularMil,
  droppingOhms,
  foot,
  gaugeAmps,
  gaugeDiameter,
  inch,
  ledReverseVolts,
  leds,
  metals,
  nextAbove,
  nearest,
  saturationFrom,
  wireAreaMm2,
  wireOhmsPerMetre
} from '../../src/lib/tables';
import { D, G, J, R, chain, solved } from '../circuit/build';
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

describe('Physics of Conductors and Insulators (vol. I)', () => {
  const copper = metals['element copper'];
  const perCircularMil = circularMil / foot;

  test('copper: 1.678 µΩ·cm, 10.09 Ω·cmil/ft, 0.004041 1/K', () => {
    near(copper.resistivity, 1.678e-8, book);
    near(perCircularMil, 1.66243e-9, { rel: 1e-5 });
    near(copper.resistivity / perCircularMil, 10.09, book);
    near(copper.alpha, 0.004041, { abs: 5e-6 });
  });

  test('iron: 9.61 µΩ·cm, within 1.1 % of the value kept', () => {
    near(metals.iron.resistivity, 9.61e-8, { rel: 1.1e-2 });
  });

  test('15 Ω at 20 °C is 15.909 Ω at 35 °C', () => {
    near(atTemperature(15, copper.alpha ?? NaN, 35), 15.909, { abs: 5e-3 });
  });

  test('a feeder for 25 A over 2300 ft each way', () => {
    const each = (230 - 220) / 25 / 2;
    near(each, 0.2, book);
    const needed = (10.09 * 2300) / each;
    near(needed, 116035, book);
    const mils = (n: number): number => (gaugeDiameter(n) / (inch / 1000)) ** 2;
    expect(mils(-1)).toBeGreaterThan(needed);
    expect(mils(0)).toBeLessThan(needed);
    const thin = wireOhmsPerMetre('AWG 14', copper.resistivity) * 2300 * foot;
    near(thin, 5.651, book);
    const s = solved(
      G('G', ['p', '0'], 230),
      R('out', ['p', 'm'], thin),
      R('back', ['m', '0'], thin)
    );
    near(2 * thin, 11.301, book);
    near(-s.amps('G'), 20.352, book);
  });

  test('a bar of aluminium, 4 × 3 cm and 125 cm long', () => {
    near((metals.aluminium.resistivity * 1.25) / (0.04 * 0.03), 27.604e-6, { rel: 5e-4 });
  });

  test.each([
    [20, 9],
    [16, 18],
    [14, 25],
    [10, 40]
  ])('AWG %d carries %d A in free air', (n, amps) => {
    expect(gaugeAmps[`AWG ${String(n)}`]?.amps).toBe(amps);
  });

  test('the gauge law meets the printed table at 10 and 32', () => {
    near(gaugeDiameter(10) / inch, 0.1019, { rel: 5e-4 });
    near(wireAreaMm2('AWG 32'), (Math.PI / 4) * (0.00795 * 25.4) ** 2, { rel: 1e-3 });
  });
});

describe('Diodes and rectifiers (vol. III)', () => {
  test.each([
    [6, 220, 0.088, 220, 220, 20e-3, 88e-3],
    [24, 1120, 0.448, 1200, 1100, 18.667e-3, 418.1e-3]
  ])('an LED of 1.6 V and 20 mA on %d V', (volts, ...rest) => {
    const [ohms = NaN, watts = NaN, above = NaN, close = NaN, amps = NaN, dropped = NaN] = rest;
    const exact = droppingOhms(volts, 1.6, 20e-3);
    near(exact, ohms, book);
    near(0.02 ** 2 * exact, watts, book);
    expect(nextAbove(exact, 'E12')).toBe(above);
    expect(nearest(exact, 'E24')).toBe(close);
    near((volts - 1.6) / above, amps, book);
    near((volts - 1.6) ** 2 / above, dropped, book);
  });

  test('saturation current from 1 A at 0.925 V, n 2, Vt 26 mV', () => {
    near(saturationFrom(0.925, 1, 2, 0.026), 1.8818e-8, book);
  });

  test('forward voltage ranges of LEDs and 5 V in reverse', () => {
    expect(leds.infrared.range).toEqual([1.2, 1.7]);
    expect(leds.red.range).toEqual([1.5, 2.4]);
    expect(leds.yellow.range).toEqual([1.7, 2.8]);
    expect(leds.green.range).toEqual([1.7, 2.8]);
    expect(leds.white.range).toEqual([3, 4]);
    expect(leds.blue.range).toEqual([3, 4]);
    expect(ledReverseVolts).toBe(5);
    for (const { volts, range } of Object.values(leds)) {
      expect(volts).toBeGreaterThanOrEqual(range[0]);
      expect(volts).toBeLessThanOrEqual(range[1]);
    }
  });

  test('a red LED turned round on 12 V without a protecting diode stands all of it', () => {
    const red = saturationFrom(leds.red.volts, leds.red.testAmps);
    const s = solved(G('G', ['p', '0'], -12), R('R', ['p', 'k'], 1000), D('D', ['k', '0'], red, 2));
    near(s.volts('k'), -12, book);
    expect(-(s.volts('k') ?? NaN)).toBeGreaterThan(ledReverseVolts);
  });
});
