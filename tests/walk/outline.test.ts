import { describe, expect, test } from 'vitest';
import { quayWorking } from '../../src/lib/motion';
import { advice, answerOf, admitWalk, outline, plainText, walkFile } from '../../src/lib/walk';
import { countWords, type YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

const yards: readonly (readonly [string, YardInput])[] = [
  ['one road', { deckRoads: 1 }],
  ['five and four', { deckRoads: 5, stablingRoads: 4 }],
  ['twelve and six', { deckRoads: 12, stablingRoads: 6 }],
  ['twenty-four and twelve', { deckRoads: 24, stablingRoads: 12 }],
  ['the improved yard', quayWorking.yard],
  ['a rotary', { deckRoads: 4, stablingRoads: 2, switching: 'rotary' }],
  ['pushes', { deckRoads: 4, stablingRoads: 2, switching: 'pushes' }],
  ['no switches', { deckRoads: 3, switching: 'none' }],
  ['no switches, stabling', { deckRoads: 3, stablingRoads: 2, switching: 'none' }],
  ['no pin contacts', { deckRoads: 4, stablingRoads: 2, interlocked: false, runningRoad: 'none' }],
  ['no running road', { deckRoads: 4, stablingRoads: 1, runningRoad: 'none' }],
  ['running roads at both ends', { deckRoads: 4, runningEnds: 'both' }],
  ['running road in the east', { deckRoads: 2, runningEnds: 'east', runningRoad: 'interlocked' }],
  ['a deck wired for good', { deckRoads: 4, stablingRoads: 2, plug: false }],
  ['one deck road that faces a running one', { deckRoads: 1, runningRoad: 'direct' }],
  ['two controllers', { deckRoads: 6, stablingRoads: 2, second: { roads: ['D', 'E', 'F'] } }],
  [
    'long names',
    {
      deckRoads: 5,
      stablingRoads: 4,
      names: { A: 'Down goods arrival loop', 1: 'Old engine house road' }
    }
  ],
  ['a return star with lamps', { deckRoads: 6, stablingRoads: 3, return: 'star', lamps: 'own' }],
  [
    'cut roads',
    {
      deckRoads: 3,
      stablingRoads: 2,
      cuts: [
        { road: 'A', atMm: 600 },
        { road: '1', atMm: 150 }
      ]
    }
  ],
  ['few volts', { deckRoads: 3, stablingRoads: 1, supply: { volts: 2 } }],
  ['a loco of its own', { deckRoads: 3, stablingRoads: 1, locos: { Tern: { shape: 'tank' } } }]
];

describe.each(yards)('the outline of %s', (_, input) => {
  const walk = outline(yardOf(input));

  test('needs no advice', () => {
    expect(advice(walk)).toEqual([]);
  });

  test('has steps of at most 45 words with one to three things lit, and a call that the engine answers', () => {
    for (const { words, lit, heading } of walk.steps) {
      expect(countWords(plainText(words)), heading).toBeLessThanOrEqual(45);
      expect([1, 2, 3], heading).toContain(lit.length);
    }
    const calls = walk.steps.filter(({ call }) => call);
    expect(calls.length).toBeGreaterThan(0);
    for (const { call, scene } of calls) {
      expect(answerOf(walk.yard, scene, call as NonNullable<typeof call>)).toHaveProperty(
        'answers'
      );
    }
  });

  test('comes in again as it goes out', () => {
    expect(admitWalk(JSON.parse(JSON.stringify(walkFile(walk))))).toEqual(walk);
  });
});
