import { describe, expect, test } from 'vitest';
import {
  contacts,
  equipmentWireAmps,
  fixedWiringAmps,
  gaugeAmps,
  leds,
  liberalWireAmps,
  metals,
  panelParts,
  strandedSizes,
  voltmeterOhms,
  wireAreaMm2,
  wireOhmsPerMetre
} from '../../src/lib/tables';

const tables = {
  contacts,
  equipmentWireAmps,
  fixedWiringAmps,
  gaugeAmps,
  leds,
  liberalWireAmps,
  metals,
  panelParts
};

describe('every entry', () => {
  test.each(Object.entries(tables))('of %s names its source', (_, table) => {
    const entries: { readonly source: string }[] = Object.values(table);
    expect(entries.length).toBeGreaterThan(0);
    for (const { source } of entries) expect(source.length).toBeGreaterThan(5);
  });

  test.each(Object.entries(tables))('of %s has numbers above 0 and no others', (_, table) => {
    for (const entry of Object.values(table) as object[]) {
      const numbers = Object.values(entry)
        .flat()
        .filter((value) => typeof value === 'number');
      expect(numbers.length).toBeGreaterThan(0);
      for (const number of numbers) expect(number).toBeGreaterThan(0);
    }
  });
});

describe('wires', () => {
  test('every stranded size can be looked up, thicker ones with less resistance', () => {
    const ohms = strandedSizes.map((size) => wireOhmsPerMetre(size));
    expect(ohms).toEqual([...ohms].sort((a, b) => b - a));
    for (const size of strandedSizes) expect(equipmentWireAmps[size]?.amps).toBeGreaterThan(0);
  });

  test('a wire may not usually carry what it may at most', () => {
    for (const [size, { amps }] of Object.entries(equipmentWireAmps)) {
      expect(amps).toBeLessThan(liberalWireAmps[size]?.amps ?? Infinity);
    }
  });

  test('sizes can be written in three ways', () => {
    expect(wireAreaMm2('0.5 mm²')).toBe(0.5);
    expect(wireAreaMm2('24/0.2')).toBeCloseTo(0.754, 3);
    expect(wireAreaMm2('AWG 22')).toBeCloseTo(0.3255, 4);
  });
});

describe('contacts', () => {
  test('are small beside a loco and a meter is large beside everything', () => {
    for (const { ohms, ohmsNewAtMost = Infinity } of Object.values(contacts)) {
      expect(ohms).toBeLessThan(1);
      expect(ohms).toBeLessThanOrEqual(ohmsNewAtMost);
    }
    expect(voltmeterOhms).toBe(10e6);
  });
});
