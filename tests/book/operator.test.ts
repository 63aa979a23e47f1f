import { describe, expect, test } from 'vitest';
import { operator } from '../../src/lib/book';
import { read, type YardInput } from '../../src/lib/yard';
import { roadScene } from '../../src/lib/checks';
import { yardOf } from '../yard/build';

const table = (input: YardInput, title: string) =>
  operator.make(yardOf(input)).tables.find((each) => each.title === title)?.rows;

describe('the operator card', () => {
  test('tells each kind of move as hands make it', () => {
    const rows = table({ deckRoads: 1, stablingRoads: 1, names: { A: 'Harbour' } }, 'Moves');
    expect(rows).toEqual([
      [
        'Q to A Harbour',
        'Deck at A, pin home; A on, all others off',
        'east, until the train is wholly on A',
        'Knob to centre, then all off'
      ],
      [
        'A Harbour to Q',
        'Deck at A, pin home; A on, all others off',
        'west, until the train is wholly on Q',
        'Knob to centre, then all off'
      ],
      [
        '1 to R',
        'Deck at 1, pin home; R and 1 on, all others off',
        'west, until the train is wholly on R',
        'Knob to centre, then all off'
      ],
      [
        'R to 1',
        'Deck at 1, pin home; R and 1 on, all others off',
        'east, until the train is wholly on 1',
        'Knob to centre, then all off'
      ]
    ]);
  });

  test('a yard whose deck does not move has no moves; one without lamps says nothing of them', () => {
    expect(table({ deckRoads: 3 }, 'Moves')).toBeUndefined();
    expect(table({ deckRoads: 3 }, 'Lamps')).toBeUndefined();
  });

  test('has every switch once, in columns short enough for one page', () => {
    for (const deckRoads of [3, 20, 21, 40]) {
      const rows = table({ deckRoads }, 'Switches, in the order of the panel') ?? [];
      const names = rows.flat().filter((cell) => cell !== '');
      expect(new Set(names).size).toBe(deckRoads);
      expect(names).toHaveLength(deckRoads);
      expect(rows.length).toBeLessThanOrEqual(20);
    }
  });

  test.each(['own', 'track'] as const)(
    'lamps of kind %s: what it says is what the engine shows',
    (lamps) => {
      const yard = yardOf({ deckRoads: 2, lamps });
      const on = roadScene({ yard, roads: ['A'] });
      const lamp = (scene: object) => read(yard, { ...on, ...scene }).lamp('A');
      expect(lamp({})).toBe('lit');
      expect(lamp({ switches: {} })).toBe('dark');
      expect(lamp({ controller: -1 })).toBe(lamps === 'own' ? 'lit' : 'dark');
      expect(lamp({ controller: 0.25 })).toBe(lamps === 'own' ? 'lit' : 'dim');
      const said = table({ deckRoads: 2, lamps }, 'Lamps')?.map(([is]) => is);
      expect(said).toEqual(lamps === 'own' ? ['Lit', 'Dark'] : ['Lit', 'Dim', 'Dark']);
    }
  );
});
