import { describe, expect, test } from 'vitest';
import {
  beyond,
  BorderError,
  eastMm,
  holes,
  liveRoads,
  read,
  roads,
  toggleRoads,
  wire,
  type YardInput
} from '../../src/lib/yard';
import { moment, sceneOf, thrown, yardOf, type SceneInput } from './build';

type Cut = NonNullable<YardInput['cuts']>[number];
const cutA = (cut: Partial<Cut> = {}): YardInput => ({
  deckRoads: 2,
  cuts: [{ road: 'A', rail: 'feed', atMm: 600, ...cut }]
});
const on = { A1: true, A2: false };

/** Roads that are live in a yard with A cut, A1 on and A2 off. */
const live = (cut: Partial<Cut>, scene: SceneInput = {}): readonly string[] => {
  const { yard, scene: whole } = moment(cutA(cut), { switches: on, controller: 1, ...scene });
  return [...liveRoads(yard, whole)];
};

describe('a road that is cut', () => {
  const yard = yardOf({
    deckRoads: 3,
    stablingRoads: 1,
    cuts: [
      { road: 'B', atMm: 500 },
      { road: 1, atMm: 150 }
    ]
  });

  test('is two sections, each with a toggle, a feed and a row; they lie end to end', () => {
    expect(roads(yard)).toEqual(['Q', 'A', 'B1', 'B2', 'C', 'R', '1a', '1b']);
    expect(toggleRoads(yard)).toEqual(['A', 'B1', 'B2', 'C', 'R', '1a', '1b']);
    for (const deck of [0, -60, -100]) {
      expect(beyond(yard, deck, 'B1', 'east')).toEqual({ kind: 'road', road: 'B2' });
      expect(beyond(yard, deck, 'B2', 'west')).toEqual({ kind: 'road', road: 'B1' });
    }
    expect(beyond(yard, -60, 'Q', 'east')).toEqual({ kind: 'road', road: 'B1' });
    expect(beyond(yard, -60, 'B2', 'east')).toEqual({ kind: 'barrier' });
    expect(holes(yard).map(({ name }) => name)).toEqual(['A', 'B', 'C', 'R', '1']);
    expect(
      eastMm(
        yard,
        sceneOf(yard, { locos: { Plover: { road: 'B2', atMm: 100 } } }).locos.Plover as never
      )
    ).toBe(600);
  });

  test('keeps the rail that is not cut: a rail joiner joins it', () => {
    const joiners = (rail: Cut['rail']) =>
      wire(yardOf(cutA({ rail })))
        .map(({ id }) => id)
        .filter((id) => id.includes('joiner'));
    expect(joiners('feed')).toEqual(['return joiner A1-A2']);
    expect(joiners('return')).toEqual(['feed joiner A1-A2']);
    expect(joiners('both')).toEqual([]);
  });

  // The rail to cut is the feed rail: a looped return goes round a gap in it. Source: reference, F12.
  test.each<[Cut['rail'], string[]]>([
    ['feed', ['A1']],
    ['both', ['A1']],
    ['return', ['A1', 'A2']]
  ])('cut in the %s rail: with A1 on and A2 off, %j are live', (rail, roadsLive) => {
    expect(live({ rail })).toEqual(roadsLive);
  });

  test('only the deck-side section of a cut running road asks the pin', () => {
    const guarded = yardOf({
      deckRoads: 2,
      stablingRoads: 1,
      runningRoad: 'interlocked',
      cuts: [{ road: 'Q', atMm: 1800 }]
    });
    const contacts = wire(guarded)
      .flatMap(({ parts }) => parts)
      .filter(({ kind }) => kind === 'pin contact');
    expect(contacts.map(({ id }) => id)).toEqual(['pin contact Q2', 'pin contact 1']);
    const scene = (pin: 'home' | 'out') =>
      sceneOf(guarded, { deck: 'A', pin, switches: { Q1: true, Q2: true }, controller: 1 });
    expect([...liveRoads(guarded, scene('home'))]).toEqual(['Q1', 'Q2']);
    expect([...liveRoads(guarded, scene('out'))]).toEqual(['Q1']);
  });

  test.each<YardInput>([
    { deckRoads: 2, cuts: [{ road: 'Z', atMm: 600 }] },
    { deckRoads: 2, cuts: [{ road: 'A', atMm: 1150 }] },
    {
      deckRoads: 2,
      cuts: [
        { road: 'A', atMm: 600 },
        { road: 'A', atMm: 650 }
      ]
    }
  ])('is refused in words: %j', (input) => {
    expect((thrown(() => yardOf(input)) as Error).message).toMatch(/cuts in roads of this yard/);
  });
});

describe('wheels across the gap of a cut', () => {
  const place = (atMm: number) => ({ road: 'A1', atMm });

  test('a lit coach across it feeds the dead section, and its lamp burns', () => {
    expect(live({}, { stock: { coach: place(300) } })).toEqual(['A1']);
    expect(live({}, { stock: { coach: place(550) } })).toEqual(['A1', 'A2']);
    const { yard, scene } = moment(cutA(), {
      switches: on,
      controller: 1,
      stock: { coach: place(550) }
    });
    // 12 V over 120 Ω is 0.1 A; the supply's 0.5 Ω and the wires take a little.
    expect(read(yard, scene).amps('coach')).toBeGreaterThan(0.098);
    expect(read(yard, scene).amps('coach')).toBeLessThan(0.1);
  });

  test.each<[number, boolean]>([
    [575, false],
    [578.4, false],
    [578.6, true],
    [580, true],
    [581.4, true],
    [581.6, false],
    [599, false]
  ])(
    'a plain wheel only while it stands on it: wagon at %d mm, axle 20 mm ahead: %j',
    (atMm, fed) => {
      expect(live({}, { stock: { wagon: place(atMm) } })).toEqual(fed ? ['A1', 'A2'] : ['A1']);
    }
  );

  test('a loco across it takes its volts from the live section', () => {
    const { yard, scene } = moment(cutA(), {
      switches: on,
      controller: 0.6,
      locos: { Plover: place(590) }
    });
    expect(read(yard, scene).amps('Plover')).toBeGreaterThan(0.18);
  });
});

describe('fit(stock)', () => {
  const yard = yardOf({ deckRoads: 2, stablingRoads: 1 });

  test('coupled stock stands buffer to buffer, behind the loco’s tail or ahead of its nose', () => {
    const west = sceneOf(yard, {
      locos: { Heron: { road: 'A', atMm: 600, faces: 'west' } },
      stock: { coach: { behind: 'Heron' }, wagon: { ahead: 'Heron' } }
    });
    expect(west.stock).toMatchObject({
      coach: { road: 'A', atMm: 600 + 105 + 120, coupled: 'Heron' },
      wagon: { road: 'A', atMm: 600 - 105 - 40, coupled: 'Heron' }
    });
    expect(sceneOf(yard, JSON.parse(JSON.stringify(west)))).toEqual(west);
  });

  test.each<[SceneInput, RegExp]>([
    [{ stock: { van: 'A' } }, /stock 'van'.*coach or wagon/],
    [{ stock: { coach: { behind: 'Heron' } } }, /coupled to 'Heron'/],
    [
      { stock: { coach: { behind: 'coach 2' }, 'coach 2': { behind: 'coach' } } },
      /coupled to 'coach 2'/
    ],
    [{ locos: { Heron: 'A' }, stock: { coach: 'A' } }, /where Heron stands/],
    [
      {
        locos: { Heron: { road: 'B', atMm: 200 } },
        stock: { coach: { behind: 'Heron' } },
        deck: 0
      },
      /where the rails end/
    ],
    [
      {
        locos: { Heron: { road: 'A', atMm: 900 } },
        stock: { coach: { road: 'A', atMm: 200, coupled: 'Heron' } }
      },
      /out of reach/
    ]
  ])('refuses %j in words', (input, words) => {
    const error = thrown(() => sceneOf(yard, input));
    expect(error).toBeInstanceOf(BorderError);
    expect((error as Error).message).toMatch(words);
  });

  test('moves a loco placed half over an open gap clear of it: its wheels on rails', () => {
    const { locos } = sceneOf(yard, { deck: -30, locos: { Plover: { road: 'Q', atMm: 2399 } } });
    expect(locos.Plover?.atMm).toBe(2400 - 15);
  });
});
