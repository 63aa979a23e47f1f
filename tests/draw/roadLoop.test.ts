import { describe, expect, test } from 'vitest';
import { roadLoop } from '../../src/lib/draw';
import { testsOf } from '../../src/lib/hunt';
import { yardOf } from '../yard/build';

const quay = yardOf({ deckRoads: 5, stablingRoads: 4 });

describe('roadLoop(yard, pair, roads)', () => {
  test('goes out by the feed and home by the return, with the probes in their order', () => {
    const loop = roadLoop(quay, ['plug C deck side', 'return'], ['C']);
    expect(loop?.out.map(({ id }) => id)).toEqual([
      'feed',
      'feed tag C',
      'toggle C rail side',
      'plug C deck side',
      'feed rail C'
    ]);
    expect(loop?.home.map(({ id }) => id)).toEqual([
      'return rail C',
      'return tag C',
      'deck joint',
      'return joint',
      'return'
    ]);
    const held = [...(loop?.out ?? []), ...(loop?.home ?? [])].filter(
      ({ lead }) => lead !== undefined
    );
    expect(held.map(({ id, lead }) => [id, lead])).toEqual([
      ['plug C deck side', 0],
      ['return', 1]
    ]);
  });

  test('names the point that is held where two lie on one node, and the pin contact ahead of its toggle', () => {
    const loop = roadLoop(quay, ['toggle 2 panel side', 'return'], []);
    expect(loop?.out.map(({ id }) => id)).toEqual([
      'feed',
      'feed tag 2',
      'toggle 2 panel side',
      'toggle 2 rail side',
      'feed rail 2'
    ]);
  });

  test('is none where the points lie on two roads', () => {
    expect(roadLoop(quay, ['plug A deck side', 'plug B deck side'], [])).toBeUndefined();
  });

  test.each([
    ['toggles', quay],
    ['a ring, a rotary', yardOf({ deckRoads: 3, return: 'ring', switching: 'rotary' })],
    ['two controllers', yardOf({ deckRoads: 3, second: { roads: ['B'] } })]
  ])('every test with a lamp or a voltmeter has its drawing: %s', (_, yard) => {
    const held = testsOf(yard).filter(({ kind }) => kind === 'testLamp' || kind === 'volts');
    const bare = held.filter(({ id, moment }) => {
      const pair = moment.pairs.find((each) => id.includes(` ${each.join(' to ')},`));
      return !pair || !roadLoop(yard, pair, moment.roads);
    });
    expect(held.length).toBeGreaterThan(10);
    expect(bare.map(({ id }) => id)).toEqual([]);
  });
});
