import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contacts } from '../../src/lib/tables';
import {
  act,
  actionWords,
  flip,
  liveRoads,
  read,
  sceneWords,
  selectorStands,
  selectorWords,
  switchedRoads,
  switchPlace,
  switchWord,
  toggleRoads,
  wire,
  type YardInput
} from '../../src/lib/yard';
import { moment, sceneOf, thrown, yardOf } from './build';

const quay: YardInput = { deckRoads: 5, stablingRoads: 4 };
const all = ['A', 'B', 'C', 'D', 'E', 'R', '1', '2', '3', '4'];

describe('switching', () => {
  test.each<[YardInput['switching'], part: string | undefined, ohms: number | undefined]>([
    ['toggles', 'toggle', contacts.toggle.ohms],
    ['rotary', 'selector', contacts['rotary selector'].ohms],
    ['pushes', 'push', contacts.push.ohms],
    ['none', undefined, undefined]
  ])('%s: a %s in each feed, behind the pin contact', (switching, part, ohms) => {
    const yard = yardOf({ ...quay, switching });
    const feed = (road: string) => wire(yard).find(({ id }) => id === `feed ${road}`)?.parts ?? [];
    const kinds = feed('1').map(({ kind }) => kind);
    expect(kinds).toEqual(['pin contact', ...(part ? [part] : []), 'wire']);
    expect(feed('A').map(({ kind }) => kind)).toEqual([...(part ? [part] : []), 'plug', 'wire']);
    expect(feed('A').find(({ kind }) => kind === part)?.ohms).toBe(ohms);
    expect(switchedRoads(yard)).toEqual(part ? all : []);
    expect(toggleRoads(yard)).toEqual(switching === 'toggles' ? all : []);
    expect(switchPlace(yard, 'A')).toBe(part ? `${part} A` : '');
    expect(switchPlace(yard, 'Q')).toBe('');
  });

  test('a rotary has 11 roads and off on its wafer; one road more is refused in words', () => {
    expect(switchedRoads(yardOf({ deckRoads: 11, switching: 'rotary' }))).toHaveLength(11);
    const error = thrown(() => yardOf({ deckRoads: 12, switching: 'rotary' }));
    expect(String(error)).toMatch(/at most 11 roads on a rotary .*12-way wafer.*toggles for more/);
    expect(yardOf({ deckRoads: 12 }).switching).toBe('toggles');
  });

  test('the selector stands at a position or between neighbours, and nowhere else', () => {
    const yard = yardOf({ deckRoads: 3, switching: 'rotary' });
    expect(selectorStands(yard)).toEqual(['off', 'off-A', 'A', 'A-B', 'B', 'B-C', 'C']);
    for (const selector of selectorStands(yard)) {
      expect(sceneOf(yard, { selector }).selector).toBe(selector);
    }
    for (const selector of ['A-C', 'D', 'B-A', '']) {
      expect(String(thrown(() => sceneOf(yard, { selector })))).toContain('off, off-A, A, A-B');
    }
    expect(String(thrown(() => sceneOf(yard, { switches: { A: true } })))).toContain('no toggles');
    const toggled = thrown(() => sceneOf(yardOf({ deckRoads: 3 }), { selector: 'A' }));
    expect(String(toggled)).toContain('no selector in this yard');
  });

  test('a number is the name of a stabling road', () => {
    const yard = yardOf({ ...quay, switching: 'rotary' });
    expect(sceneOf(yard, { selector: 1 }).selector).toBe('1');
  });

  test('a rotary never has two roads live, except make-before-break between two', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.constantFrom('break before make' as const, 'make before break' as const),
        fc.nat(),
        (deckRoads, rotary, pick) => {
          const yard = yardOf({ deckRoads, switching: 'rotary', rotary });
          const stands = selectorStands(yard);
          const selector = stands[pick % stands.length] as string;
          const live = [...liveRoads(yard, sceneOf(yard, { selector }))];
          const named = selector.split('-').filter((name) => name !== 'off');
          const isBetween = selector.includes('-');
          expect(live).toEqual(isBetween && rotary === 'break before make' ? [] : named);
        }
      ),
      { numRuns: 60 }
    );
  });

  test('flip: a hand on a road throws, turns there and off again, holds and lets go', () => {
    const hand = (input: YardInput) => {
      const { yard, scene } = moment({ deckRoads: 2, ...input });
      const first = act(yard, scene, flip(yard, scene, 'B'));
      const then = act(yard, first, flip(yard, first, 'B'));
      return [first, then].map((at) => `${switchWord(yard, at, 'B')} ${[...liveRoads(yard, at)]}`);
    };
    expect(hand({})).toEqual(['on B', 'off ']);
    expect(hand({ switching: 'rotary' })).toEqual(['on B', 'off ']);
    expect(hand({ switching: 'pushes' })).toEqual(['held B', 'let go ']);
  });

  test('words: held and let go, where the selector stands', () => {
    const pushes = { switching: 'pushes' } as const;
    expect(actionWords({ switch: { A: true } }, pushes)).toBe('You hold push A.');
    expect(actionWords({ switch: { A: false } }, pushes)).toBe('You let go of push A.');
    expect(actionWords({ selector: 'B' })).toBe('You turn the selector to B.');
    expect(actionWords({ selector: 'off' })).toBe('You turn the selector off.');
    expect(actionWords({ second: -0.5 })).toBe('You turn the second knob to 50 % west.');
    expect(selectorWords('A-B')).toBe('between A and B');
    const words = (input: YardInput, scene: Parameters<typeof sceneOf>[1]) => {
      const at = moment({ deckRoads: 2, ...input }, scene);
      return sceneWords(at.yard, at.scene);
    };
    expect(words(pushes, {})).toContain('No push is held.');
    expect(words(pushes, { switches: { B: true } })).toContain('Held: B.');
    expect(words({ switching: 'rotary' }, { selector: 'A-B' })).toContain(
      'The selector is between A and B.'
    );
  });

  test('why: a road whose position is not chosen is open at its selector contact', () => {
    const { yard, scene } = moment(
      { deckRoads: 2, switching: 'rotary' },
      { selector: 'A', locos: { Plover: 'B' } }
    );
    expect(read(yard, scene).why('B').breaks).toEqual(['selector B']);
    expect(read(yard, scene).why('A').state).toBe('loop');
  });
});
