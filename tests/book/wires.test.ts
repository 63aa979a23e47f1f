import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { schedule, sheets, wiresOf, type Sheet } from '../../src/lib/book';
import { roadScene } from '../../src/lib/checks';
import { solve, type Element } from '../../src/lib/circuit';
import { csv } from '../../src/lib/share';
import { wireOhmsPerMetre } from '../../src/lib/tables';
import {
  apply,
  circuitOf,
  holes,
  lampRoads,
  roads,
  switchedRoads,
  wire,
  type Yard
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { yardOf, type Moment } from '../yard/build';
import { anyMoment, anyPlug, anyYard } from '../yard/random';

const parts = sheets.find(({ id }) => id === 'parts') as Sheet;

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

/** The terminals of a part that the schedule names, a diode's anode first. */
function terminalsOf(ends: readonly string[], id: string): readonly string[] {
  const own = [...new Set(ends.filter((end) => end.startsWith(`${id}, `)))];
  return own.sort(
    (a, b) => Number(/, (\+|return side)$/.test(b)) - Number(/, (\+|return side)$/.test(a))
  );
}

/** The wiring put together from the schedule's CSV alone; contacts stand as the scene says. */
function rebuilt(yard: Yard, parts: readonly Element[]): readonly Element[] {
  const rows = parsed(scheduleCsv(yard));
  const wires = rows.map((row): Element => {
    const ohms = wireOhmsPerMetre(row.Size ?? '') * Number(row['As laid, m']);
    const [a = '', b = ''] = [row.From, row.To];
    return { kind: 'switch', id: `wire ${row['No.']}`, a, b, closed: true, ohms };
  });
  const ends = rows.flatMap((row) => [row.From ?? '', row.To ?? '']);
  const others = parts.flatMap((part): readonly Element[] => {
    const [a, b] = terminalsOf(ends, part.id);
    return a && b ? [{ ...part, a, b }] : [];
  });
  return [...wires, ...others];
}

/** Yards of every kind: lamps, rotaries, pushes and second controllers among them. */
const anyKind: fc.Arbitrary<Yard> = fc
  .record({
    deckRoads: fc.integer({ min: 1, max: 8 }),
    stablingRoads: fc.integer({ min: 0, max: 3 }),
    return: fc.constantFrom('chain' as const, 'ring' as const, 'star' as const),
    runningRoad: fc.constantFrom('none' as const, 'direct' as const, 'interlocked' as const),
    runningEnds: fc.constantFrom('west' as const, 'both' as const),
    switching: fc.constantFrom('toggles' as const, 'rotary' as const, 'pushes' as const),
    lamps: fc.constantFrom('none' as const, 'own' as const, 'track' as const),
    second: fc.boolean()
  })
  .filter(({ deckRoads, stablingRoads }) => stablingRoads <= deckRoads)
  .filter(({ switching, deckRoads }) => switching !== 'rotary' || deckRoads <= 4)
  .map(({ second, lamps, switching, ...input }) =>
    yardOf({
      ...input,
      switching,
      lamps: switching === 'pushes' ? 'none' : lamps,
      ...(second && input.deckRoads > 1 && { second: { roads: ['A'] } })
    })
  );

/** A sound yard of any kind with one or two roads on, at any of its holes. */
const anyScene: fc.Arbitrary<Moment> = anyKind.chain((yard) => {
  const road = fc.constantFrom(...roads(yard));
  const hole = fc.constantFrom(undefined, ...holes(yard));
  return fc.record({ on: fc.tuple(road, road), hole, plug: anyPlug }).map(({ on, hole, plug }) => ({
    yard,
    scene: {
      ...roadScene({ yard, roads: on, locos: ['Heron'] }),
      ...(hole && { deck: hole.deckMm, pin: 'home' as const }),
      plug
    }
  }));
});

/** A CSV carries lengths to 1 mm, and so ohms to less than this and volts with them. */
const CSV_VOLTS = 2e-3;

/** Whether the wiring soldered by the schedule's CSV reads as the yard's own circuit does. */
function sameReadings({ yard, scene }: Moment): void {
  const whole = circuitOf(yard, scene);
  const runs = apply(yard, scene);
  const soldered = runs.flatMap((run) =>
    /joiner/.test(run.id) ? [] : run.parts.map(({ id }) => id)
  );
  const isLaid = ({ id }: Element) => soldered.includes(id);
  const own = whole.elements.filter(isLaid);
  const others = whole.elements.filter((element) => !isLaid(element));
  const [drawn, laid] = [
    solve(whole),
    solve({ ...whole, elements: [...others, ...rebuilt(yard, own)] })
  ];
  for (const road of roads(yard)) {
    const [a, b] = [`feed rail ${road}`, `return rail ${road}`];
    const [before, after] = [drawn, laid].map((each) => each.between(a, b));
    expect(after === undefined).toBe(before === undefined);
    near(after ?? 0, before ?? 0, { abs: CSV_VOLTS });
  }
  for (const id of [
    ...Object.keys(scene.locos),
    ...lampRoads(yard).map((road) => `lamp ${road}`)
  ]) {
    near(laid.amps(id), drawn.amps(id), { abs: 2e-3 });
  }
}

/** Kinds of parts that are soldered at two sides, and those which the parts sheet counts one by one. */
const SOLDERED = [
  'toggle',
  'selector',
  'push',
  'pin contact',
  'plug',
  'lamp pole',
  'resistor',
  'lamp',
  'lamp guard'
];

/** How many of a part the parts sheet says. */
const bought = (yard: Yard, name: RegExp): number =>
  (parts.make(yard).tables[0]?.rows ?? [])
    .filter(([part]) => name.test(String(part)))
    .reduce((sum, [, count]) => sum + Number(count), 0);

describe('the wiring schedule', () => {
  test.each([
    ['toggled or not', anyMoment(anyYard), 120, 21],
    ['of any kind', anyScene, 80, 22]
  ] as const)(
    'put together again from its CSV alone, a yard %s reads the same in random scenes',
    (_, moments, numRuns, seed) => {
      fc.assert(fc.property(moments, sameReadings), { numRuns, seed });
    }
  );

  test('of any yard of 1–40 + 0–20 has every wire, contact and part once, and counts that match', () => {
    const anySize = fc
      .record({
        deckRoads: fc.integer({ min: 1, max: 40 }),
        stablingRoads: fc.integer({ min: 0, max: 20 }),
        return: fc.constantFrom('chain' as const, 'ring' as const, 'star' as const),
        lamps: fc.constantFrom('none' as const, 'own' as const, 'track' as const),
        runningRoad: fc.constantFrom('direct' as const, 'interlocked' as const)
      })
      .filter(({ deckRoads, stablingRoads }) => stablingRoads <= deckRoads)
      .map((input) => yardOf(input));
    fc.assert(
      fc.property(anySize, (yard) => {
        const rows = parsed(scheduleCsv(yard));
        expect(rows.map((row) => Number(row['No.']))).toEqual(rows.map((_, index) => index + 1));
        const pairs = rows.map(({ From, To }) => [From, To].sort().join(' – '));
        expect(new Set(pairs).size).toBe(pairs.length);
        const ends = rows.flatMap(({ From, To }) => [From as string, To as string]);
        const laid = new Set(ends);
        const all = wire(yard).flatMap((run) => run.parts);
        for (const { id } of all.filter(({ kind }) => SOLDERED.includes(kind))) {
          const sides = [...laid].filter((end) => end.startsWith(`${id}, `));
          expect(sides, id).toHaveLength(2);
        }
        for (const road of roads(yard)) {
          for (const rail of [`feed rail ${road}`, `return rail ${road}`]) {
            expect(
              ends.filter((end) => end === rail),
              rail
            ).toHaveLength(1);
          }
        }
        const count = (kind: string) => all.filter((part) => part.kind === kind).length;
        expect(bought(yard, /^Miniature toggle/)).toBe(count('toggle'));
        expect(bought(yard, /^Micro-switch/)).toBe(count('pin contact'));
        expect(bought(yard, /^LED/)).toBe(count('lamp'));
        expect(bought(yard, /^Resistor/)).toBe(count('resistor'));
        expect(count('toggle')).toBe(switchedRoads(yard).length);
        expect(count('plug')).toBe(
          yard.plug ? yard.deckRoads + Number(yard.releaseRoad) + yard.plug.returnContacts : 0
        );
      }),
      {
        numRuns: 25,
        seed: 7,
        examples: [[yardOf({ deckRoads: 40, stablingRoads: 20 })], [yardOf({ deckRoads: 1 })]]
      }
    );
  });

  test('no two wires share a terminal unless both say so', () => {
    fc.assert(
      fc.property(anyKind, (yard) => {
        const rows = parsed(scheduleCsv(yard));
        const at = new Map<string, string[]>();
        for (const row of rows) {
          const joints = row.Joints?.split('; ') ?? [];
          [row.From, row.To].forEach((end, index) =>
            at.set(end as string, [...(at.get(end as string) ?? []), joints[index] ?? ''])
          );
        }
        for (const [end, joints] of at) {
          const said = joints.filter((joint) => joint.includes(' with '));
          expect(said.length, end).toBe(joints.length > 1 ? joints.length : 0);
        }
      }),
      { numRuns: 40, seed: 5 }
    );
  });

  test('names the wires that share a terminal by their numbers', () => {
    const rows = parsed(scheduleCsv(yardOf({ deckRoads: 2 })));
    expect(rows.map(({ From, To, Joints }) => [From, To, Joints]).slice(0, 3)).toEqual([
      ['feed', 'toggle A, panel side', 'screw terminal; soldered with 2'],
      ['toggle A, panel side', 'toggle B, panel side', 'soldered with 1; soldered'],
      ['return tag B', 'return tag A', 'soldered with 8; soldered with 4 and 6']
    ]);
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
