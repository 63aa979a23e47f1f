import { describe, expect, test } from 'vitest';
import { BorderError, beyond, facing, holeAt, holes, roads, travel } from '../../src/lib/yard';
import { moment, sceneOf, thrown, yardOf } from './build';

/**
 * The deck of Quillby Quay. Every number here is the demo scenario's: deck roads 60 mm apart with R
 * 75 mm south of E, stabling roads at 35, 95, 155 and 215 mm south of the Quay line, travel 315 mm.
 */
const quay = yardOf({ deckRoads: 5, stablingRoads: 4 });

const stops: [name: string, deckMm: number, fixed: string, deckRoad: string][] = [
  ['A', 0, 'Q', 'A'],
  ['B', -60, 'Q', 'B'],
  ['C', -120, 'Q', 'C'],
  ['D', -180, 'Q', 'D'],
  ['E', -240, 'Q', 'E'],
  ['R', -315, 'Q', 'R'],
  ['1', -280, '1', 'R'],
  ['2', -220, '2', 'R'],
  ['3', -160, '3', 'R'],
  ['4', -100, '4', 'R']
];

/** South of the deck's first road, and of the running road's line, mm. */
const onDeck = { A: 0, B: 60, C: 120, D: 180, E: 240, R: 315 };
const onGround = { Q: 0, 1: 35, 2: 95, 3: 155, 4: 215 };

describe('holes(yard)', () => {
  test('are the ten of the plate: six running stops, four stabling stops', () => {
    const found = holes(quay).map((each) => [each.name, each.deckMm, each.fixed, each.deckRoad]);
    expect(found).toEqual(stops);
  });

  test.each(stops)('%s at %d mm: no other deck road within 15 mm of a fixed road', (...stop) => {
    const [, deckMm, fixed, deckRoad] = stop;
    const distances = Object.entries(onDeck).flatMap(([road, south]) =>
      Object.entries(onGround)
        .filter(([name]) => !(road === deckRoad && name === fixed))
        .map(([, line]) => Math.abs(south + deckMm - line))
    );
    expect(distances).toHaveLength(6 * 5 - 1);
    expect(Math.min(...distances)).toBeGreaterThanOrEqual(15);
    expect(facing(quay, deckMm)).toEqual([
      { deckRoad, fixed, end: fixed === 'Q' ? 'west' : 'east' }
    ]);
  });

  test.each([
    [{ deckRoads: 3 }, ''],
    [{ deckRoads: 3, runningRoad: true }, 'A B C'],
    [{ deckRoads: 2, stablingRoads: 2 }, 'A B R 1 2'],
    [{ deckRoads: 2, stablingRoads: 2, runningRoad: false }, '1 2'],
    [{ deckRoads: 2, stablingRoads: 1, releaseRoad: false }, 'A B 1']
  ])('of %j: %s', (input, names) => {
    const found = holes(yardOf(input)).map(({ name }) => name);
    expect(found.join(' ')).toBe(names);
  });

  test('face the deck road that the yard names, not only the last one', () => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 2, facesStabling: 'C' });
    const found = holes(yard).filter(({ fixed }) => /\d/.test(fixed));
    expect(found.map(({ deckMm, fixed, deckRoad }) => [deckMm, fixed, deckRoad])).toEqual([
      [35 - 120, '1', 'C'],
      [95 - 120, '2', 'C']
    ]);
    expect(facing(yard, 35 - 120)).toContainEqual({ deckRoad: 'C', fixed: '1', end: 'east' });
  });

  test('a deck road that is not there, or cannot go so far south, is refused in words', () => {
    const refused = (facesStabling: string) =>
      String(thrown(() => yardOf({ deckRoads: 5, stablingRoads: 4, facesStabling })));
    expect(refused('Z')).toMatch(/facesStabling.*the letter of a deck road of this yard/s);
    expect(refused('B')).toMatch(/no further south than the deck road that faces them/);
  });

  const sizes = [1, 2, 5, 12, 26, 40].flatMap((deckRoads) =>
    [0, 1, deckRoads].map((stabling) => ({ deckRoads, stablingRoads: Math.min(stabling, 20) }))
  );
  test.each(sizes)('of $deckRoads + $stablingRoads roads lie within the travel', (size) => {
    const yard = yardOf({ ...size, runningRoad: true });
    const { least, most } = travel(yard);
    for (const { deckMm, name } of holes(yard)) {
      expect(deckMm).toBeGreaterThanOrEqual(least);
      expect(deckMm).toBeLessThanOrEqual(most);
      expect(sceneOf(yard, { deck: name }).deck).toBe(deckMm);
    }
    expect(holes(yard)).toHaveLength(roads(yard).length - 1);
  });

  test('a stabling road further south than the deck can follow is refused with the yard', () => {
    expect(thrown(() => yardOf({ deckRoads: 2, stablingRoads: 3 }))).toBeInstanceOf(BorderError);
  });
});

describe('travel(yard), fit(scene).deck', () => {
  test('the deck goes from A at the Quay line, 315 mm north, to R', () => {
    expect(travel(quay)).toEqual({ least: -315, most: 0 });
    expect(sceneOf(quay, { deck: -315 }).deck).toBe(-315);
    expect(() => sceneOf(quay, { deck: -315.1 })).toThrow('or -315 to 0 mm');
  });

  test.each([
    ['C', -120],
    ['2', -220],
    [2, -220],
    [-140, -140]
  ])('%j is %d mm', (deck, mm) => {
    expect(sceneOf(quay, { deck }).deck).toBe(mm);
  });

  test('a hole that is not there is refused with those that are', () => {
    expect(() => sceneOf(quay, { deck: 'F' })).toThrow('allowed: A, B, C, D, E, R, 1, 2, 3, 4, or');
  });

  test('the pin is home where there is a hole, unless it is said to be out', () => {
    expect(sceneOf(quay, { deck: '2' }).pin).toBe('home');
    expect(sceneOf(quay, { deck: '2', pin: 'out' }).pin).toBe('out');
    expect(sceneOf(quay, { deck: -140 }).pin).toBe('out');
    expect(() => sceneOf(quay, { deck: -140, pin: 'home' })).toThrow('home where there is no hole');
  });
});

describe('facing(yard), holeAt(yard): tolerance', () => {
  test.each(stops)('%s: within 0.4 mm of %d mm, either way, and no further', (...stop) => {
    const [name, deckMm, fixed, deckRoad] = stop;
    for (const off of [-0.39, 0, 0.39]) {
      expect(facing(quay, deckMm + off)).toMatchObject([{ deckRoad, fixed }]);
      expect(holeAt(quay, deckMm + off)?.name).toBe(name);
    }
    for (const off of [-0.41, 0.41, 5]) {
      expect(facing(quay, deckMm + off)).toEqual([]);
      expect(holeAt(quay, deckMm + off)).toBeUndefined();
    }
  });

  test('a yard may be built finer or coarser', () => {
    const coarse = yardOf({ deckRoads: 5, stablingRoads: 4, toleranceMm: 2 });
    expect(holeAt(coarse, -121.9)?.name).toBe('C');
    expect(holeAt(coarse, -122.1)).toBeUndefined();
  });
});

describe('beyond(yard): what a loco meets at each end of each road, west and east', () => {
  const closed = 'barrier barrier';
  const off = 'gap backstop';
  test.each<[what: string, deckMm: number, expected: Record<string, string>]>([
    [
      'C faces the Quay line',
      -120,
      { Q: 'backstop C', A: closed, C: 'Q barrier', R: closed, 1: off, 2: off, 3: off, 4: off }
    ],
    [
      'R faces the Quay line',
      -315,
      { Q: 'backstop R', A: closed, E: closed, R: 'Q barrier', 1: off, 4: off }
    ],
    [
      'R faces 2',
      -220,
      { Q: 'backstop gap', A: closed, E: closed, R: 'barrier 2', 1: off, 2: 'R backstop', 3: off }
    ],
    [
      'nothing faces anything, and D stands 5 mm from 1',
      -140,
      { Q: 'backstop gap', B: closed, C: closed, D: 'barrier gap', R: closed, 1: off, 3: off }
    ],
    [
      'C stands 10 mm from the Quay line, in its opening',
      -110,
      { Q: 'backstop gap', C: 'gap barrier', D: closed }
    ],
    [
      'R stands 5 mm from 4, and C, D, E 10 mm from 1, 2, 3',
      -95,
      { C: 'barrier gap', D: 'barrier gap', E: 'barrier gap', R: 'barrier gap', B: closed, 4: off }
    ],
    ['C is 0.5 mm out of line', -120.5, { Q: 'backstop gap', C: 'gap barrier' }]
  ])('%s', (_, deckMm, expected) => {
    for (const [road, ends] of Object.entries(expected)) {
      const found = (['west', 'east'] as const).map((end) => {
        const next = beyond(quay, deckMm, road, end);
        return next.kind === 'road' ? next.road : next.kind;
      });
      expect([road, found.join(' ')]).toEqual([road, ends]);
    }
  });

  test('a deck that is wired for good ends at barriers', () => {
    const { yard, scene } = moment({ deckRoads: 2 });
    for (const road of ['A', 'B']) {
      expect(beyond(yard, scene.deck, road, 'west')).toEqual({ kind: 'barrier' });
      expect(beyond(yard, scene.deck, road, 'east')).toEqual({ kind: 'barrier' });
    }
  });
});
