import { describe, expect, test } from 'vitest';
import { backTo20, conductorLimits, fineWireLimits, wireOhmsPerMetre } from '../../src/lib/tables';
import type { ConductorClass } from '../../src/lib/tables';
import { near } from '../circuit/near';

/** IEC 60228:2004, tables 1 to 3, as three cable makers reprint them: Ω/km at 20 °C. */
const limit = (kind: ConductorClass, mm2: number) =>
  conductorLimits[kind].find((row) => row.mm2 === mm2);

describe('conductorLimits, plain', () => {
  test.each([
    [1, 0.5, 36],
    [2, 0.5, 36],
    [1, 1, 18.1],
    [2, 1.5, 12.1],
    [1, 4, 4.61],
    [5, 0.75, 26],
    [5, 1, 19.5],
    [5, 2.5, 7.98],
    [5, 4, 4.95]
  ] as const)('class %d, %d mm²', (kind, mm2, ohms) => {
    expect(limit(kind, mm2)?.plain).toBe(ohms);
  });
});

describe('conductorLimits, metal-coated', () => {
  test.each([
    [1, 0.5, 36.7],
    [2, 2.5, 7.56],
    [5, 0.5, 40.1],
    [5, 1.5, 13.7],
    [5, 4, 5.09]
  ] as const)('class %d, %d mm²', (kind, mm2, ohms) => {
    expect(limit(kind, mm2)?.coated).toBe(ohms);
  });

  test('every limit lies above what the area alone gives, coated above plain', () => {
    for (const rows of Object.values(conductorLimits)) {
      for (const { mm2, plain, coated } of rows) {
        expect(plain).toBeGreaterThan(wireOhmsPerMetre(`${String(mm2)} mm²`) * 1000);
        expect(coated).toBeGreaterThan(plain);
      }
    }
  });
});

/** A list attributed to DIN VDE 0295; single source, the row of 0.22 mm² is doubtful. */
describe('fineWireLimits', () => {
  test.each([
    [0.14, 134, 138],
    [0.34, 53, 56],
    [0.22, 96, 99]
  ])('%d mm²', (mm2, plain, coated) => {
    const row = fineWireLimits.find((one) => one.mm2 === mm2);
    near(row?.plain, plain, { rel: 0.03 });
    near(row?.coated, coated, { rel: 0.03 });
  });
});

/** IEC 60228, table of temperature factors, as a cable maker reprints it. */
describe('backTo20(T)', () => {
  test.each([
    [30, 0.962],
    [50, 0.893],
    [90, 0.781]
  ])('%d °C', (celsius, factor) => near(backTo20(celsius), factor, { abs: 1e-3 }));
});
