import { describe, expect, test } from 'vitest';
import { because, happened, play, watch, way, WATCH_SECONDS } from '../../src/lib/predict';
import { TICKS_PER_SECOND } from '../../src/lib/motion';
import type { Edit, Scene } from '../../src/lib/yard';
import { moment } from '../yard/build';

const scene = { locos: { Plover: 'A', Heron: 'B' }, controller: 0.6 };

const played = (edits: Edit[], switches: Record<string, boolean> = { A: true, B: true }) => {
  const at = moment({ deckRoads: 2 }, { ...scene, switches });
  return play(at.yard, at.scene, { edits });
};

describe('way(before, after, loco)', () => {
  const at = (atMm: number): Scene =>
    moment({ deckRoads: 1 }, { locos: { Plover: { road: 'A', atMm } } }).scene;

  test.each([
    [600, 600, 'stays'],
    [600, 602.9, 'stays'],
    [600, 603, 'east'],
    [600, 597, 'west'],
    [600, 1100, 'east']
  ])('from %d to %d mm: %s', (from, to, expected) => {
    expect(way(at(from), at(to), 'Plover')).toBe(expected);
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
      'Row A is open at feed wire and return dropper A: one ink on both rails of its loco.'
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
