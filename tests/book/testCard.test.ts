import { describe, expect, test } from 'vitest';
import { cardOf, differs, testCard } from '../../src/lib/book';
import { held, type TestLine } from '../../src/lib/book/card/line';
import { keyOf, sectionsOf } from '../../src/lib/book/card/lines';
import { CardReader } from '../../src/lib/book/card/reader';
import {
  faultName,
  faultsOf,
  read,
  roads,
  type Edit,
  type Fault,
  type Yard,
  type YardInput
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { yardOf } from '../yard/build';

/** Each way to switch, to return, to interlock, to plug and to light, in small. */
const kinds: readonly YardInput[] = [
  { deckRoads: 2, stablingRoads: 1 },
  { deckRoads: 3, return: 'ring', plug: { returnContacts: 1 } },
  { deckRoads: 2, stablingRoads: 2, return: 'ring', lamps: 'own', runningRoad: 'interlocked' },
  { deckRoads: 2, stablingRoads: 2, return: 'star', interlocked: false, lamps: 'track' },
  { deckRoads: 2, stablingRoads: 1, switching: 'rotary', rotary: 'make before break' },
  { deckRoads: 2, switching: 'pushes', runningRoad: 'interlocked', runningEnds: 'both' },
  { deckRoads: 2, stablingRoads: 1, switching: 'none' },
  { deckRoads: 3, second: { roads: ['A', 'B'] }, plug: { returnContacts: 3 } },
  {
    deckRoads: 2,
    stablingRoads: 1,
    facesStabling: 'B',
    cuts: [{ road: 'A', rail: 'feed', atMm: 500 }]
  }
];

const isBare = ({ where, road }: TestLine, faults: readonly Fault[] = []): boolean =>
  where.includes('resistor') &&
  faults.some((each) => 'lampBare' in each && each.lampBare === `lamp ${road}`);

/** What `read` says a line's meter reads: the long way, with instruments held by edits. */
function reads(yard: Yard, line: TestLine, more: Partial<TestLine['scene']> = {}): number {
  // A lamp without its resistor has no ends to hold the probes to: they are on one wire.
  if (isBare(line, more.faults)) return 0;
  const edits: readonly Edit[] = [...line.scene.edits, ...(more.edits ?? []), ...held(line)];
  const reading = read(yard, { ...line.scene, ...more, edits: [...edits] });
  return line.how === 'ohms' ? (reading.ohms ?? Infinity) : (reading.volts('meter volts') ?? 0);
}

/** The lines that are on the card, with their scenes. */
function onCard(yard: Yard, mostWhole?: number): readonly TestLine[] {
  const { sections } = cardOf(yard, mostWhole);
  const keys = sections.flatMap(({ lines }) => lines.map(({ key }) => key));
  const all = sectionsOf(yard).flatMap(({ lines }) => lines);
  const found = keys.map((key) => all.find((line) => keyOf(line) === key) as TestLine);
  expect(found).not.toContain(undefined);
  return found;
}

/** Lines of the roads that a fault names come first: they find it sooner. */
const sorted = (lines: readonly TestLine[], fault: Fault): readonly TestLine[] =>
  lines.toSorted(
    (a, b) =>
      Number(JSON.stringify(fault).includes(`${b.road}"`)) -
      Number(JSON.stringify(fault).includes(`${a.road}"`))
  );

/** The faults which change no line by more than a meter's error. */
function missed(yard: Yard, lines: readonly TestLine[]): readonly string[] {
  const reader = new CardReader(yard, lines);
  const expected = new Map(lines.map((line) => [line, reader.reads(line)]));
  const isMissed = (fault: Fault) =>
    sorted(lines, fault).every(
      (line) => !differs(expected.get(line) as number, reader.reads(line, fault))
    );
  return faultsOf(yard).filter(isMissed).map(faultName);
}

describe('the test card', () => {
  test.each(kinds)('%j: whole or not, each single fault changes a line', (input) => {
    const yard = yardOf(input);
    const [whole, few] = [sectionsOf(yard).flatMap(({ lines }) => lines), onCard(yard, 0)];
    expect(few.length).toBeLessThan(0.75 * whole.length);
    expect(missed(yard, few)).toEqual([]);
    expect(onCard(yard).map(keyOf)).toEqual(whole.map(keyOf));
  });

  test.each(kinds)('%j: its readings are those of the yard read line by line', (input) => {
    const yard = yardOf(input);
    const lines = sectionsOf(yard).flatMap((section) => section.lines);
    const reader = new CardReader(yard, lines);
    const faults = faultsOf(yard);
    lines.forEach((line, index) => {
      const fault = faults[(index * 7) % faults.length] as Fault;
      for (const some of [[], [fault]]) {
        const [own, long] = [reader.reads(line, some[0]), reads(yard, line, { faults: some })];
        if (Number.isFinite(long)) near(own, long, { rel: 1e-6, abs: 1e-6 });
        else expect(own, keyOf(line)).toBe(long);
      }
    });
  });

  test.each(kinds)('%j: a short across any road shows before first power', (input) => {
    const yard = yardOf(input);
    const lines = onCard(yard).filter(({ how, always }) => how === 'ohms' && always);
    const quiet = lines.map((line) => reads(yard, line));
    for (const road of roads(yard)) {
      const edits: Edit[] = [{ metal: `rails of ${road}` }];
      const shows = lines.some((line, index) =>
        differs(quiet[index] as number, reads(yard, line, { edits }))
      );
      expect(shows, road).toBe(true);
    }
  });

  test('lists what hides, why, and the line that shows it with a wire open', () => {
    const card = cardOf(yardOf({ deckRoads: 2, stablingRoads: 1 }));
    const all = card.sections.flatMap(({ lines }) => lines);
    const told = card.hidden.map(({ faults, why, line }) => ({
      faults,
      why,
      set: all.find(({ number }) => number === line)?.set
    }));
    const why = 'Another contact of the return stands beside it.';
    expect(told).toEqual([
      {
        faults: ['Plug return 1 never makes.', 'A bad joint of 200 Ω is in plug return 1.'],
        why,
        set: 'A on, plug return 2 open'
      },
      {
        faults: [
          'Plug return 2 never makes.',
          'The plug is half home: its last contact does not make.',
          'A bad joint of 200 Ω is in plug return 2.'
        ],
        why,
        set: 'A on, plug return 1 open'
      }
    ]);
  });

  test('a ring is opened at either end, and every link of it found', () => {
    const { hidden } = cardOf(yardOf({ deckRoads: 3, return: 'ring' }));
    expect(hidden.every(({ line }) => line !== undefined)).toBe(true);
    expect(hidden.flatMap(({ faults }) => faults)).toContain('The closing link is broken.');
  });

  test('goes in order: dead, first power, live, joints, lamps, what is opened, by hand', () => {
    const yard = yardOf({ deckRoads: 2, stablingRoads: 1, lamps: 'own', return: 'ring' });
    const titles = testCard.make(yard).tables.map(({ title }) => title);
    expect(titles.map((title) => title.split(/[:,] /)[0])).toEqual([
      'Dead tests',
      'First power',
      'Under power',
      'Across the joint',
      'Panel lamps',
      'Open',
      'By hand',
      'What hides'
    ]);
  });

  test('draws the pin 1 mm at a time where a contact stands on it', () => {
    const hands = (input: YardInput) =>
      JSON.stringify(testCard.make(yardOf(input)).tables.find(({ title }) => title === 'By hand'));
    expect(hands({ deckRoads: 2, stablingRoads: 1 })).toContain('pin 1 mm at a time');
    expect(hands({ deckRoads: 2 })).not.toContain('pin 1 mm');
  });
});

describe('differs(expected, met)', () => {
  test.each([
    [12, 12.2, false],
    [12, 12.3, true],
    [0, 0.05, false],
    [0.1, 0.25, true],
    [Infinity, Infinity, false],
    [Infinity, 5, true],
    [5, Infinity, true],
    [11.6, -11.6, true]
  ])('%d and %d', (expected, met, answer) => {
    expect(differs(expected, met)).toBe(answer);
  });
});
