import { describe, expect, test } from 'vitest';
import { fitLamp } from '../../src/lib/checks';
import { nearest } from '../../src/lib/tables';
import { near } from '../circuit/near';

/** Lessons in Electric Circuits III, Diodes, for the first two rows; the rest by its formula and IEC 60063. */
describe('fitLamp: resistor, current and heat of an LED', () => {
  test.each([
    [6, 1.6, 20, 220, 220, 220, 20, 88],
    [24, 1.6, 20, 1120, 1200, 1100, 18.667, 418.1],
    [12, 2, 10, 1000, 1000, 1000, 10, 100],
    [12, 2.1, 15, 660, 680, 680, 14.559, 144.1],
    [12, 3.2, 20, 440, 470, 430, 18.723, 164.8],
    [5, 3.2, 20, 90, 100, 91, 18, 32.4],
    [9, 3.8, 12, 433.33, 470, 430, 11.064, 57.53],
    [3.3, 1.9, 2, 700, 820, 680, 1.7073, 2.39],
    [16, 2, 8, 1750, 1800, 1800, 7.7778, 108.9]
  ])('%d V, Uf %d V, %d mA: %d Ω, E12 above %d Ω, nearest E24 %d Ω', (...row) => {
    const [supplyVolts, ledVolts, milliamps, wanted, e12, e24, amps, watts] = row;
    const fit = fitLamp({ supplyVolts, ledVolts, amps: milliamps / 1000 }, 'E12');
    near(fit.wantedOhms, wanted, { rel: 1e-3 });
    expect(fit.ohms).toBe(e12);
    expect(nearest(fit.wantedOhms, 'E24')).toBe(e24);
    near(fit.amps * 1000, amps, { rel: 1e-3 });
    near(fit.watts * 1000, watts, { rel: 2e-3 });
  });

  test('from E24 it takes the next above too, where E12 is further off', () => {
    const wish = { supplyVolts: 12, ledVolts: 3.2, amps: 20e-3 };
    expect(fitLamp(wish, 'E24').ohms).toBe(470);
    expect(fitLamp({ ...wish, ledVolts: 3.8 }, 'E24').ohms).toBe(430);
    expect(fitLamp({ ...wish, ledVolts: 3.8 }, 'E12').ohms).toBe(470);
  });
});
