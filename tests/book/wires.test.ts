import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { schedule, wiresOf } from '../../src/lib/book';
import { solve, type Element } from '../../src/lib/circuit';
import { csv } from '../../src/lib/share';
import { wireOhmsPerMetre } from '../../src/lib/tables';
import { apply, circuitOf, roads, wire, type Scene, type Yard } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { anyMoment, anyYard } from '../yard/random';
import { yardOf } from '../yard/build';

/** Rows of a sheet's CSV, its head as keys. */
function parsed(text: string): readonly Readonly<Record<string, string>>[] {
  const cells = (line: string) =>
    [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) =>
      (quoted ?? plain ?? '').replaceAll('""', '"')
    );
  const [head = [], ...rows] = text.trimEnd().split('\r\n').map(cells);
  return rows.map((row) => Object.fromEntries(head.map((key, index) => [key, row[index] ?? ''])));
}

function scheduleCsv(yard: Yard): string {
  const table = schedule.make(yard).tables.find(({ title }) => title === 'Wires');
  return csv([table?.columns ?? [], ...(table?.rows ?? [])]);
}

/** The wiring put together from the schedule's CSV alone; contacts stand as the scene says. */
function rebuilt(yard: Yard, scene: Scene): readonly Element[] {
  const rows = parsed(scheduleCsv(yard)).filter((row) => !row.For?.startsWith('lamp'));
  const wires = rows.map((row): Element => {
    const ohms = wireOhmsPerMetre(row.Size ?? '') * Number(row['As laid, m']);
    const [a = '', b = ''] = [row.From, row.To];
    return { kind: 'switch', id: `wire ${row['No.']}`, a, b, closed: true, ohms };
  });
  const ends = rows.flatMap((row) => [row.From ?? '', row.To ?? '']);
  const contacts = apply(yard, scene)
    .flatMap((run) => run.parts)
    .flatMap(({ id, closed, ohms }): readonly Element[] => {
      const [a, b] = [...new Set(ends.filter((end) => end.startsWith(`${id}, `)))];
      return a && b ? [{ kind: 'switch', id, a, b, closed, ohms }] : [];
    });
  return [...wires, ...contacts];
}

describe('the wiring schedule', () => {
  test('put together again from its CSV alone, a yard reads the same in 200 random scenes', () => {
    fc.assert(
      fc.property(anyMoment(anyYard), ({ yard, scene }) => {
        const whole = circuitOf(yard, scene);
        const own = new Set(apply(yard, scene).flatMap((run) => run.parts.map(({ id }) => id)));
        const others = whole.elements.filter(({ id }) => !own.has(id));
        const [drawn, soldered] = [
          solve(whole),
          solve({ ...whole, elements: [...others, ...rebuilt(yard, scene)] })
        ];
        for (const road of roads(yard)) {
          const [a, b] = [`feed rail ${road}`, `return rail ${road}`];
          const [before, after] = [drawn, soldered].map((each) => each.between(a, b));
          expect(after === undefined).toBe(before === undefined);
          near(after ?? 0, before ?? 0, { abs: 2e-3 });
        }
        for (const name of Object.keys(scene.locos)) {
          near(soldered.amps(name), drawn.amps(name), { abs: 2e-3 });
        }
      }),
      { numRuns: 200, seed: 21 }
    );
  });

  test.each([
    { deckRoads: 1 },
    { deckRoads: 5, stablingRoads: 4, lamps: 'own' },
    { deckRoads: 12, stablingRoads: 6, return: 'ring', runningRoad: 'interlocked', lamps: 'track' },
    { deckRoads: 40, stablingRoads: 20, return: 'star' }
  ] as const)('%j: every wire once, every contact with both its sides', (input) => {
    const yard = yardOf(input);
    const all = wiresOf(yard);
    expect(all.map(({ number }) => number)).toEqual(all.map((_, index) => index + 1));
    const pairs = all.map(({ from, to }) => [from, to].sort().join(' – '));
    expect(new Set(pairs).size).toBe(pairs.length);
    const ends = new Set(all.flatMap(({ from, to }) => [from, to]));
    const contacts = wire(yard)
      .flatMap((run) => run.parts)
      .filter(({ kind }) => ['toggle', 'pin contact', 'plug', 'lamp', 'resistor'].includes(kind));
    for (const { id } of contacts) {
      expect(
        [...ends].filter((end) => end.startsWith(`${id}, `)),
        id
      ).toHaveLength(2);
    }
  });

  test('its metres of wire are those of the circuit', () => {
    const yard = yardOf({ deckRoads: 3, stablingRoads: 2 });
    const ohms = wiresOf(yard).reduce(
      (sum, { size, lengthM }) => sum + wireOhmsPerMetre(size) * lengthM,
      0
    );
    const drawn = wire(yard)
      .flatMap((run) => run.parts)
      .filter(({ kind }) => kind === 'wire')
      .reduce((sum, part) => sum + part.ohms, 0);
    near(ohms, drawn, { rel: 1e-12 });
  });
});
