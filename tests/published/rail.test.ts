import { describe, expect, test } from 'vitest';
import { metals, railHeight, railOhmsPerMetre } from '../../src/lib/tables';
import { near } from '../circuit/near';

/** The code of a rail is its height in 1/1000 in, by definition. */
describe('railHeight(code)', () => {
  test.each([
    [55, 1.397],
    [75, 1.905],
    [80, 2.032],
    [83, 2.108]
  ])('code %d', (code, mm) => near(railHeight(code) * 1000, mm, { abs: 5e-3 }));

  test('codes 80 and 55 pair with profiles of 20 and 14 tenths of a millimetre (NEM 913)', () => {
    expect(Math.round(railHeight(80) * 1e4)).toBe(20);
    expect(Math.round(railHeight(55) * 1e4)).toBe(14);
  });
});

/** A geometric estimate, area factor from memory of NMRA RP-15.1 sections: ±25 %, mΩ/m. */
describe('railOhmsPerMetre(code, metal)', () => {
  test.each([
    [55, 425, 90, 243],
    [83, 186, 40, 107],
    [100, 128, 27, 74]
  ])('code %d', (code, silver, brass, steel) => {
    near(railOhmsPerMetre(code) * 1000, silver, { rel: 0.25 });
    near(railOhmsPerMetre(code, 'brass') * 1000, brass, { rel: 0.25 });
    near(railOhmsPerMetre(code, 'steel') * 1000, steel, { rel: 0.25 });
  });

  test('a code 100 nickel-silver rail is worth 0.13 mm² of copper', () => {
    const mm2 = (metals['annealed copper'].resistivity / railOhmsPerMetre(100)) * 1e6;
    near(mm2, 0.13, { rel: 0.25 });
  });
});

/** Copper-alloy data and Smithsonian Physical Tables from memory; C71500 from its data sheet. */
describe('metals of rails', () => {
  test.each([
    ['nickel silver', 28.7e-8, 0.05],
    ['German silver', 33e-8, 0.1],
    ['copper-nickel', 37.5e-8, 0.01],
    ['nickel silver', 3.0e-7, 0.13]
  ] as const)('%s', (metal, resistivity, rel) =>
    near(metals[metal].resistivity, resistivity, { rel })
  );

  test('German silver lies in the band of its compositions (Kaye & Laby)', () => {
    for (const metal of ['nickel silver', 'German silver'] as const) {
      expect(metals[metal].resistivity).toBeGreaterThan(16e-8);
      expect(metals[metal].resistivity).toBeLessThan(40e-8);
    }
    near(metals['German silver'].alpha, 0.0004, { rel: 0.01 });
  });
});
