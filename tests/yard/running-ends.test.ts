import { describe, expect, test } from 'vitest';
import {
  beyond,
  BorderError,
  deckRoom,
  eastMm,
  facing,
  holeAt,
  holes,
  liveRoads,
  read,
  roads,
  roadsOf,
  stopWords,
  travel,
  wire,
  type YardInput
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, reading, sceneOf, thrown, yardOf, type SceneInput } from './build';

/**
 * Two storage roads and a stabling road. Worked by hand: A 0, B 60 and R 135 mm south on the deck,
 * stabling road 1 at 35 mm south of the line of Q, a second road at one end 60 mm north of it.
 */
const small = (runningEnds: YardInput['runningEnds'], more: YardInput = {}) =>
  yardOf({ deckRoads: 2, stablingRoads: 1, runningEnds, ...more });

const own = ['A 0 A-Q', 'B -60 B-Q', 'R -135 R-Q'];

describe('running roads at either end', () => {
  test.each([
    ['west', 'Q A B R 1', [...own, '1 -100 R-1'], 135],
    ['east', 'A B R Q 1', [...own, '1 -100 R-1'], 135],
    [
      'both',
      'Q A B R QQ 1',
      [...own, 'A at QQ 0 A-QQ', 'B at QQ -60 B-QQ', 'R at QQ -135 R-QQ', '1 -100 R-1'],
      135
    ],
    [
      'two west',
      'Q QQ A B R 1',
      [...own, 'A at QQ -60 A-QQ', 'B at QQ -120 B-QQ', 'R at QQ -195 R-QQ', '1 -100 R-1'],
      195
    ],
    [
      'two east',
      'A B R Q QQ 1',
      [...own, 'A at QQ -60 A-QQ', 'B at QQ -120 B-QQ', 'R at QQ -195 R-QQ', '1 -100 R-1'],
      195
    ]
  ] as const)('%s: roads %s, holes and travel by hand', (ends, names, stops, travelMm) => {
    const yard = small(ends);
    expect(roads(yard).join(' ')).toBe(names);
    expect(
      holes(yard).map(
        ({ name, deckMm, deckRoad, fixed }) => `${name} ${deckMm} ${deckRoad}-${fixed}`
      )
    ).toEqual(stops);
    expect(travel(yard)).toEqual({ least: -travelMm, most: 0 });
    expect(deckRoom(yard)).toEqual({ travelMm, deckWidthMm: 195, wellWidthMm: 195 + travelMm });
  });

  test('one in the west is what a file without the key means', () => {
    expect(yardOf({ deckRoads: 5, stablingRoads: 4 })).toEqual(
      yardOf({ deckRoads: 5, stablingRoads: 4, runningEnds: 'west' })
    );
    expect(yardOf({ deckRoads: 5 }).runningRoad).toBe('none');
    expect(yardOf({ deckRoads: 5, runningEnds: 'both' })).toMatchObject({
      runningRoad: 'direct',
      plug: { returnContacts: 2 }
    });
  });

  test('no name is met twice in the largest yard', () => {
    const names = roads(yardOf({ deckRoads: 40, stablingRoads: 20, runningEnds: 'both' }));
    expect(names).toHaveLength(40 + 1 + 20 + 2);
    expect(new Set(names).size).toBe(names.length);
  });

  test('opposite each other, a deck road leads from one to the other', () => {
    const yard = small('both');
    const at = (deck: number, road: string, end: 'west' | 'east') => {
      const next = beyond(yard, deck, road, end);
      return next.kind === 'road' ? next.road : next.kind;
    };
    expect(['Q', 'A', 'QQ'].map((road) => at(0, road, 'east'))).toEqual(['A', 'QQ', 'backstop']);
    expect(['Q', 'A', 'QQ'].map((road) => at(0, road, 'west'))).toEqual(['backstop', 'Q', 'A']);
    expect(at(-30, 'QQ', 'west')).toBe('gap');
    expect(at(-65, 'B', 'east')).toBe('gap');
    expect(at(-100, 'R', 'east')).toBe('1');
    const { locos } = sceneOf(yard, { locos: { Plover: { road: 'QQ', atMm: 100 } } });
    expect(eastMm(yard, locos.Plover as never)).toBe(1300);
    expect(stopWords(yard, 0)).toBe('A faces Q and QQ');
  });

  test('side by side, one hole of the pin serves two neighbouring deck roads', () => {
    const yard = small('two west', { runningRoad: 'interlocked' });
    expect(facing(yard, -60)).toEqual([
      { deckRoad: 'B', fixed: 'Q', end: 'west' },
      { deckRoad: 'A', fixed: 'QQ', end: 'west' }
    ]);
    expect(holeAt(yard, -60)?.name).toBe('B');
    expect(stopWords(yard, -60)).toBe('B faces Q and A faces QQ');
    const live = (deck: string) =>
      [
        ...liveRoads(yard, sceneOf(yard, { deck, switches: { Q: true, QQ: true }, controller: 1 }))
      ].join(' ');
    expect([live('A'), live('B'), live('A at QQ'), live('R at QQ')]).toEqual([
      'Q',
      'Q QQ',
      'Q QQ',
      'QQ'
    ]);
  });

  test('the return of each end goes home on its own side', () => {
    const ways = wire(small('both')).flatMap(({ id, job, road, from, to }) =>
      job === 'return' && road === undefined && !id.startsWith('plug') ? [[id, from, to]] : []
    );
    expect(ways).toEqual([
      ['loop link A-B', 'return tag B', 'return tag A'],
      ['loop link B-R', 'return tag R', 'return tag B'],
      ['deck return', 'return tag A', 'deck joint'],
      ['loop link Q', 'return tag Q', 'return joint'],
      ['loop link QQ-1', 'return tag 1', 'return tag QQ'],
      ['loop link QQ', 'return tag QQ', 'return joint'],
      ['return wire', 'return joint', 'return']
    ]);
  });

  test('only the deck-side section of a cut running road in the east asks the pin', () => {
    const yard = small('east', { runningRoad: 'interlocked', cuts: [{ road: 'Q', atMm: 1000 }] });
    const pinned = wire(yard).flatMap(({ parts }) =>
      parts.filter(({ kind }) => kind === 'pin contact').map(({ id }) => id)
    );
    expect(pinned).toEqual(['pin contact Q1', 'pin contact 1']);
    expect(roadsOf(yard).find(({ name }) => name === 'Q1')?.next).toEqual({ east: 'Q2' });
  });

  test.each<[what: string, input: YardInput]>([
    ['stabling beside it in the east', { runningEnds: 'east', stablingFromMm: 29 }],
    ['stabling beside the second', { runningEnds: 'both', stablingFromMm: 0 }],
    ['two nearer than an opening', { runningEnds: 'two west', centresMm: 60, openingMm: 61 }]
  ])('refuses roads that overlap at one end: %s', (_, input) => {
    const error = thrown(() => yardOf({ deckRoads: 3, stablingRoads: 1, ...input }));
    expect(error).toBeInstanceOf(BorderError);
    expect((error as Error).message).toContain('no fixed road nearer to a running road');
  });

  test('accepts them an opening apart, and at the other end', () => {
    expect(small('east', { stablingFromMm: 30 }).stablingFromMm).toBe(30);
    expect(small('west', { stablingFromMm: 0 }).stablingFromMm).toBe(0);
  });

  test('wheels across the east joint join both roads, as at any joint', () => {
    const astride = { Plover: { road: 'A', atMm: 1200 } };
    const at = (locos: SceneInput['locos']) =>
      reading(
        { deckRoads: 2, runningEnds: 'both', runningRoad: 'interlocked' },
        { controller: 1, switches: { A: true }, locos }
      ).between('feed rail QQ', 'return rail QQ') ?? 0;
    near(at({}), 0, { abs: 1e-6 });
    expect(at(astride)).toBeGreaterThan(10);
  });

  test('a second controller can serve the second running road', () => {
    const { yard, scene } = moment(
      { deckRoads: 2, runningEnds: 'both', second: { roads: ['QQ'] } },
      { second: 0.5 }
    );
    near(read(yard, scene).between('feed rail QQ', 'return rail QQ'), 6, { rel: 0.01 });
    near(read(yard, scene).between('feed rail Q', 'return rail Q'), 0, { abs: 1e-6 });
  });
});
