import { describe, expect, test } from 'vitest';
import {
  equipmentWireAmps,
  fixedWiringAmps,
  foot,
  gaugeDiameter,
  inch,
  liberalWireAmps,
  metals,
  wireAreaMm2,
  wireOhmsPerMetre
} from '../../src/lib/tables';
import { near } from '../circuit/near';

const per1000ft = (size: string): number => wireOhmsPerMetre(size) * 1000 * foot;

/** National Bureau of Standards wire table (as HyperPhysics reprints it); ASTM B193 and B258. */
describe('wireOhmsPerMetre(AWG), annealed copper at 20 °C', () => {
  test.each([
    [10, 0.1019, 2.5882, 5.2612, 0.9989, 3.277],
    [12, 0.08081, 2.0525, 3.3088, 1.588, 5.211],
    [13, 0.07196, 1.8278, 2.624, 2.003, 6.571],
    [15, 0.05707, 1.4495, 1.6502, 3.184, 10.45],
    [16, 0.05082, 1.2908, 1.3087, 4.016, 13.17],
    [18, 0.0403, 1.0237, 0.823, 6.385, 20.95],
    [19, 0.03589, 0.9116, 0.6527, 8.051, 26.41],
    [21, 0.02846, 0.7229, 0.4105, 12.8, 42],
    [22, 0.02535, 0.6438, 0.3255, 16.14, 52.96],
    [24, 0.0201, 0.5106, 0.2047, 25.67, 84.21],
    [25, 0.0179, 0.4547, 0.1624, 32.37, 106.2],
    [27, 0.0142, 0.3606, 0.1021, 51.47, 168.9],
    [28, 0.01264, 0.3211, 0.081, 64.9, 212.9],
    [30, 0.01003, 0.2546, 0.0509, 103.2, 338.5],
    [31, 0.00893, 0.2268, 0.0404, 130.1, 426.9]
  ])('AWG %d', (n, ...[inches, mm, mm2, ohmsPer1000ft, ohmsPerKm]) => {
    const size = `AWG ${String(n)}`;
    near(gaugeDiameter(n) / inch, inches, { rel: 1e-3, abs: 5e-6 });
    near(gaugeDiameter(n) * 1000, mm, { rel: 1e-3 });
    near(wireAreaMm2(size), mm2, { rel: 1e-3, abs: 5e-5 });
    near(per1000ft(size), ohmsPer1000ft, { rel: 1e-3 });
    near(wireOhmsPerMetre(size) * 1000, ohmsPerKm, { rel: 1e-3 });
  });

  test('the law of the gauge: 0000 is 0.4600 in, 36 is 0.0050 in, ten steps are 10.164 in area', () => {
    near(gaugeDiameter(-3) / inch, 0.46, { rel: 5e-4 });
    near(gaugeDiameter(36) / inch, 0.005, { rel: 5e-4 });
    near(wireAreaMm2('AWG 10') / wireAreaMm2('AWG 20'), 10.164, { abs: 1e-3 });
    near(wireAreaMm2('AWG 0000'), (Math.PI / 4) * 11.684 ** 2, { rel: 1e-3 });
  });
});

/** Geometry: ρ/A of round strands, no allowance for lay. */
describe('wireOhmsPerMetre(n/0.2)', () => {
  test.each([
    ['7/0.2', 0.2199, 78.4],
    ['14/0.2', 0.4398, 39.2],
    ['16/0.2', 0.5027, 34.3],
    ['24/0.2', 0.754, 22.87],
    ['32/0.2', 1.0053, 17.15]
  ])('%s mm', (size, mm2, ohmsPerKm) => {
    near(wireAreaMm2(size), mm2, { rel: 5e-3 });
    near(wireOhmsPerMetre(size) * 1000, ohmsPerKm, { rel: 2e-3 });
  });
});

describe('wireOhmsPerMetre(what is no size)', () => {
  test.each(['', '24', '24/', 'AWG', 'AWG 41', '0 mm²', '-1 mm²', '0/0.2'])(
    '%j is refused',
    (size) => {
      expect(() => wireOhmsPerMetre(size)).toThrow(RangeError);
    }
  );
});

/** NBS Handbook 100, recomputed from ASTM B258 diameters rounded to 0.1 mil; from memory. */
describe('solid wire of a rounded diameter', () => {
  test.each([
    [22, 0.0253, 16.2],
    [30, 0.01, 103.7],
    [32, 0.008, 162]
  ])('AWG %d', (n, inches, ohms) => {
    const area = (Math.PI / 4) * (inches * 25.4) ** 2;
    near(wireOhmsPerMetre(`${area.toFixed(6)} mm²`) * 1000 * foot, ohms, { rel: 5e-3 });
    near(gaugeDiameter(n) / inch, inches, { abs: 5.1e-5 });
  });
});

/** International Annealed Copper Standard, IEC 60028:1925; from memory. */
test('annealed copper is 1/58 Ω·mm²/m at 20 °C', () => {
  near(metals['annealed copper'].resistivity, 1e-6 / 58, { rel: 1e-4 });
  near(metals['annealed copper'].alpha, 0.00393, { abs: 1e-5 });
});

/** Bands of ±20 % (±1 A for fixed wiring), sources in the tables themselves. */
describe('what wires may carry', () => {
  test.each([
    [liberalWireAmps, '7/0.2', 2.2],
    [liberalWireAmps, '14/0.2', 4.5],
    [liberalWireAmps, '16/0.2', 5],
    [liberalWireAmps, '24/0.2', 7.5],
    [equipmentWireAmps, '16/0.2', 3],
    [equipmentWireAmps, '24/0.2', 4.5],
    [equipmentWireAmps, '32/0.2', 6],
    [fixedWiringAmps, '0.25 mm²', 4],
    [fixedWiringAmps, '0.75 mm²', 12],
    [fixedWiringAmps, '1 mm²', 15],
    [fixedWiringAmps, '2.5 mm²', 26]
  ])('%# %s %s', (table, size, amps) => {
    near(table[size]?.amps, amps, { rel: 0.2 });
    expect(table[size]?.source).not.toBe('');
  });

  test('about 10 A/mm² is the liberal rule', () => {
    for (const [size, { amps }] of Object.entries(liberalWireAmps)) {
      near(amps / wireAreaMm2(size), 10, { rel: 0.05 });
    }
  });
});
