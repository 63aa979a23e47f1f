import { describe, expect, test } from 'vitest';
import { schedule, sheets, wiresOf, type Sheet, type Table } from '../../src/lib/book';
import {
  classLetters,
  colourCodes,
  series,
  wireAmps,
  wireAreaMm2,
  wireOhmsPerMetre
} from '../../src/lib/tables';
import { near } from '../circuit/near';
import { yardOf } from '../yard/build';

const tableOf = (sheet: Sheet, title: string, yard = yardOf()): Table =>
  sheet.make(yard).tables.find((table) => table.title === title) ?? {
    title,
    columns: [],
    rows: []
  };

const parts = sheets.find(({ id }) => id === 'parts') as Sheet;

describe('what the book prints, against what is published', () => {
  test.each([3, 5, 9, 12, 14, 16, 24])(
    'IEC 60063: at %d V the resistor of a lamp is a value of E12',
    (volts) => {
      const yard = yardOf({ lamps: 'own', lampSupply: { volts } });
      const names = tableOf(parts, 'Parts', yard).rows.map(([name]) => String(name));
      const ohms = Number(
        /^Resistor, (\d+)/.exec(names.find((name) => /^Res/.test(name)) ?? '')?.[1]
      );
      expect(ohms).toBeGreaterThan(0);
      const first = ohms / 10 ** Math.floor(Math.log10(ohms) - 1);
      expect(series.E12).toContain(Math.round(first * 1e6) / 1e6);
    }
  );

  /** Geometry of round strands; ASTM B258 for the gauges. */
  test.each([
    ['7/0.2', 0.22, 24],
    ['16/0.2', 0.5, 20],
    ['24/0.2', 0.75, 18],
    ['32/0.2', 1, 17]
  ])('%s is told as %d mm² and AWG %d', (size, mm2, gauge) => {
    const yard = yardOf({ wires: { main: { size }, link: { size }, dropper: { size } } });
    const words = tableOf(schedule, 'Sizes of wire', yard).rows.find(([name]) => name === size);
    expect(words?.[1]).toBe(`${mm2} mm², about AWG ${gauge}`);
    near(wireAreaMm2(`AWG ${gauge}`), mm2, { rel: 0.13 });
  });

  /** ρ/A of annealed copper, 20 °C, no lay; ratings of equipment wire, from memory, ±20 %. */
  test.each([
    ['7/0.2', 78.4, 1.4],
    ['16/0.2', 34.3, 3],
    ['24/0.2', 22.87, 4.5],
    ['32/0.2', 17.15, 6]
  ])('%s has %d Ω/km and may carry %d A', (size, ohms, amps) => {
    near(wireOhmsPerMetre(size) * 1000, ohms, { rel: 2e-3 });
    near(wireAmps(size), amps, { rel: 0.2 });
  });

  test('IEC 60757 and NEM 605:2014: letters and words of the colours, return black, feed red', () => {
    const yard = yardOf({ stablingRoads: 2, lamps: 'own', colours: { scheme: 'NEM 605' } });
    const { columns, rows } = tableOf(schedule, 'Wires', yard);
    const colours = rows.map((row) => String(row[columns.indexOf('Colour')]));
    expect(colours).toHaveLength(wiresOf(yard).length);
    for (const colour of colours) {
      const [code, word] = colour.split(' ');
      expect(colourCodes[code as keyof typeof colourCodes]).toBe(word);
    }
    wiresOf(yard).forEach(({ job }, index) => {
      if (job !== 'lamp') expect(colours[index]).toBe(job === 'feed' ? 'RD red' : 'BK black');
    });
    expect(new Set(colours)).toEqual(new Set(['RD red', 'BK black', 'BN brown']));
  });

  /** Read in two teaching tables; P from memory. */
  test('IEC 81346-2:2009: the letters of the diagram', () => {
    expect(classLetters).toEqual({
      supply: 'G',
      'manual switch': 'S',
      'position switch': 'B',
      plug: 'X',
      motor: 'M',
      resistor: 'R',
      indicator: 'P'
    });
  });
});
