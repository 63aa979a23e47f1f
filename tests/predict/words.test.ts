import { describe, expect, test } from 'vitest';
import {
  because,
  happened,
  play,
  probeBecause,
  watch,
  way,
  WATCH_SECONDS
} from '../../src/lib/predict';
import { TICKS_PER_SECOND } from '../../src/lib/motion';
import type { Edit, Scene } from '../../src/lib/yard';
import { moment, sceneOf, yardOf } from '../yard/build';

const scene = { locos: { Plover: 'A', Heron: 'B' }, controller: 0.6 };

const played = (edits: Edit[], switches: Record<string, boolean> = { A: true, B: true }) => {
  const at = moment({ deckRoads: 2 }, { ...scene, switches });
  return play(at.yard, at.scene, { edits });
};

describe('way(before, after, loco)', () => {
  const yard = yardOf({ deckRoads: 2, stablingRoads: 2 });
  const at = (atMm: number, road = 'A'): Scene =>
    sceneOf(yard, { deck: 'R', locos: { Plover: { road, atMm } } });

  test.each([
    [600, 600, 'stays'],
    [600, 602.9, 'stays'],
    [600, 603, 'east'],
    [600, 597, 'west'],
    [600, 1100, 'east']
  ])('from %d to %d mm: %s', (from, to, expected) => {
    expect(way({ yard, before: at(from), after: at(to) }, 'Plover')).toBe(expected);
  });

  test.each([
    ['Q', 2380, 'R', 20, 'east'],
    ['R', 20, 'Q', 2380, 'west'],
    ['R', 1180, '2', 20, 'east'],
    ['2', 150, 'R', 1100, 'west'],
    ['Q', 2399, 'R', 1, 'stays']
  ])(
    'from road %s at %d to road %s at %d mm, over a joint: %s',
    (...[road, atMm, to, toMm, expected]) => {
      const before = at(atMm, road);
      expect(way({ yard, before, after: at(toMm, to) }, 'Plover')).toBe(expected);
    }
  );

  test('played over a joint: a loco that comes west out of 2 onto R went west', () => {
    const from2 = sceneOf(yard, {
      deck: '2',
      locos: { Plover: '2' },
      switches: { R: 'on', 2: 'on' },
      controller: '60% west'
    });
    const out = play(yard, from2, undefined);
    expect(out.after.locos['Plover']?.road).toBe('R');
    expect(way(out, 'Plover')).toBe('west');
    expect(happened(out, ['Plover'])).toBe('Plover went west.');
  });
});

describe('watch(scene)', () => {
  test('watches for its time, from the moment something is done', () => {
    const { yard, scene: start } = moment({ deckRoads: 2 }, scene);
    const seen = watch(yard, start, { switch: { A: true } });
    expect(seen.tick).toBe(WATCH_SECONDS * TICKS_PER_SECOND);
    expect(seen.scene.switches).toEqual({ A: true });
    expect(watch(yard, start, undefined).scene).toEqual(start);
  });
});

describe('happened(played)', () => {
  test('tells what each loco did', () => {
    const on = played([], { A: true });
    expect(happened(on, ['Plover', 'Heron'])).toBe('Plover went east and Heron stayed.');
    expect(happened(on, ['Plover'])).toBe('Plover went east.');
  });

  test('a loco that ran and does not go on has stopped', () => {
    const off = played([{ off: 'return wire' }], { A: true });
    expect(happened(off, ['Plover', 'Heron'])).toBe('Plover stopped and Heron stayed.');
  });

  test('a loco that fell went into the gap', () => {
    const { yard, scene: start } = moment(
      { deckRoads: 2, stablingRoads: 2 },
      { deck: -20, locos: { Plover: { road: 'Q', atMm: 2300 } }, controller: 0.6 }
    );
    expect(happened(play(yard, start, undefined), ['Plover'])).toBe(
      'Plover went east and fell into the gap.'
    );
  });
});

test('because(played) tells why a loco left its road, and where it came to', () => {
  const { yard, scene } = moment(
    { deckRoads: 1, stablingRoads: 1, runningRoad: 'none' },
    { locos: { Dunlin: '1' }, deck: '1', switches: { 1: true }, controller: -0.8 }
  );
  expect(because(play(yard, scene, { pin: 'home' }), 'Dunlin')).toBe(
    'Row 1 is whole, out and home, so Dunlin ran from it onto road R, open at toggle R.'
  );
});

test.each<[string, Edit, string, Edit[]?]>([
  [
    'a voltmeter across an open toggle',
    { volts: ['toggle A panel side', 'toggle A rail side'] },
    'Toggle A, panel side is joined to the feed and toggle A, rail side is at return level, only through Avocet.'
  ],
  [
    // 12 V over 0.5, 200 and 14 Ω in series, Ohm's law: 0.056 A, 11.97 V at the terminals, 0.78 V at Avocet.
    'a voltmeter on rails behind a bad joint',
    { volts: ['feed rail A', 'return rail A'] },
    'Of 12.0 V only 0.8 V are left there: the way takes the rest while amps flow.',
    [{ resistor: 200, in: 'feed dropper A' }]
  ],
  [
    // 12 V over 0.5, 24 and 14 Ω in series: 0.31 A.
    'a test lamp in one loop with a loco',
    { testLamp: ['feed', 'feed rail A'] },
    '7.5 V stand across the lamp, so 0.31 A flow in it.'
  ]
])('probeBecause(played) tells what %s stands between', (_, edit, words, wired = []) => {
  const { yard, scene } = moment(
    { deckRoads: 1 },
    {
      locos: { Avocet: 'A' },
      switches: { A: wired.length > 0 },
      controller: 1,
      edits: [...wired, edit]
    }
  );
  expect(probeBecause(play(yard, scene, undefined))).toBe(words);
});

describe('because(played)', () => {
  test.each<[string, Edit[], Record<string, boolean>, string]>([
    [
      'a whole loop',
      [],
      { A: true },
      'Row A is whole, out and home: two inks face each other across Plover.'
    ],
    [
      'an open toggle',
      [],
      { A: false },
      'Row A is open at toggle A: one ink on both rails of its loco.'
    ],
    [
      'two breaks',
      [{ off: 'feed wire' }, { off: 'return dropper A' }],
      { A: true },
      'Row A is open at feed wire and return dropper A: both its rails are joined to nothing.'
    ],
    [
      'both droppers on one leg',
      [{ move: 'return dropper A', to: 'feed' }],
      { A: true },
      'Both rails of row A reach the same terminal: one ink, so no volts.'
    ],
    [
      'too few volts',
      [{ resistor: 1000, in: 'feed dropper A' }],
      { A: true },
      'Row A is whole, but Plover gets too few volts to start.'
    ],
    [
      'droppers swapped',
      [
        { move: 'feed dropper A', to: 'return' },
        { move: 'return dropper A', to: 'feed' }
      ],
      { A: true },
      'Row A is whole, out and home: two inks face each other across Plover.'
    ]
  ])('%s', (_, edits, switches, words) => {
    const { yard, scene: start } = moment({ deckRoads: 2 }, { ...scene, switches, edits });
    expect(because(play(yard, start, undefined), 'Plover')).toBe(words);
  });
});
