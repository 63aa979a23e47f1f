import { describe, expect, test } from 'vitest';
import { admitWalk, advice, stepAdvice, WALK_FORMAT, type WalkStep } from '../../src/lib/walk';

const plain = {
  heading: 'One road',
  words: 'Road A is one loop: out by the feed, home by the return.',
  scene: { locos: { Plover: 'A', Heron: 'B' }, controller: '60% east', switches: { A: 'on' } },
  lit: ['road A']
};
const yard = { deckRoads: 5, stablingRoads: 4 };
const asked = {
  ask: 'You switch road B on. What does Heron do?',
  do: { switch: { B: 'on' } },
  about: ['Heron']
};

const walk = (...steps: readonly object[]) =>
  admitWalk({ format: WALK_FORMAT, version: 1, title: 'A yard', yard, steps });

/** What is said of the last of these steps. */
function told(...steps: readonly object[]): readonly string[] {
  const { yard: built, steps: all } = walk(...steps);
  return stepAdvice(built, all.at(-1) as WalkStep, all.at(-2));
}

describe('advice', () => {
  test('a sound step has none', () => {
    expect(told(plain)).toEqual([]);
    expect(
      told({ ...plain, lit: ['road B'], words: 'Heron waits on road B.', call: asked })
    ).toEqual([]);
  });

  test.each<readonly [string, object, RegExp]>([
    [
      'two ideas in one step',
      { words: 'Road A is on, and also the deck moves.' },
      /“and also” begins/
    ],
    [
      'two places lit far apart',
      { words: 'Look at both.', lit: ['toggle A', 'return dropper 4'] },
      /Roads A and 4 are lit, far apart/
    ],
    ['more than 45 words', { words: 'word '.repeat(46) }, /46 words: at most 45/],
    ['no words', { words: ' ' }, /No words yet/],
    ['nothing lit', { lit: [] }, /Nothing is lit/],
    ['a part named but not lit', { words: 'Look at toggle B.' }, /name road B, not lit/],
    ['a loco named but not lit', { words: 'Look at Heron.' }, /name Heron, not lit/],
    ['the pin named but not lit', { words: 'Look at the pin.' }, /name pin, not lit/],
    ['something lit that is not there', { lit: ['toggle Z'] }, /“toggle Z” is lit, but is not/],
    ['a word that makes it small', { words: 'Simply follow road A.' }, /“Simply” helps nobody/],
    ['left and right', { words: 'The feed comes to the left rail.' }, /“left” depends/],
    [
      'a dead road called live',
      { words: 'Roads A and B are live.', lit: ['road A', 'road B'] },
      /road B is dead here/
    ],
    ['a live road called dead', { words: 'Road A is dead.' }, /road A is live here/],
    ['a road called not live that is', { words: 'Road A is not live.' }, /road A is live here/],
    [
      'every road called dead',
      { words: 'All roads are dead.' },
      /road Q is live here and road A is live here/
    ],
    ['a toggle said to be off', { words: 'Toggle A is off.' }, /road A is on here/],
    ['only one road called live', { words: 'Only road A is live.' }, /road Q is live here/]
  ])('%s', (_, change, words) => {
    expect(told({ ...plain, ...change }).join('\n')).toMatch(words);
  });

  test('"safe" is disputed where the engine finds a live road at the gap, and only there', () => {
    const open = { ...plain.scene, deck: '1' };
    const words = { words: 'Road Q is safe.', lit: ['road Q'] };
    expect(told({ ...plain, ...words, scene: open }).join()).toMatch(
      /road Q is not safe: it is live and ends at the gap here/
    );
    expect(told({ ...plain, ...words })).toEqual([]);
    expect(told({ ...plain, words: 'All this is safe.', scene: open }).join()).toMatch(
      /road Q is not safe here/
    );
  });

  test.each<readonly [string, object, RegExp, string]>([
    ['a switch', { switches: { A: 'on', B: 'on' } }, /^Toggle B changed/, 'Road B is on now.'],
    ['the deck', { deck: 'B' }, /^The deck changed/, 'The deck brings B to the Quay line.'],
    ['the pin', { pin: 'out' }, /^The pin changed/, 'The pin is out.'],
    ['the plug', { plug: 'out' }, /^The plug changed/, 'The plug is out.']
  ])('%s that changed without a word', (_, change, silent, words) => {
    const scene = { ...plain.scene, ...change };
    const lit = { lit: ['road A', 'pin', 'plug'] };
    expect(told(plain, { ...plain, scene }).join()).toMatch(silent);
    expect(told(plain, { ...plain, ...lit, scene, words }).join()).not.toMatch(/changed/);
  });

  test('what the call before did needs no word', () => {
    const scene = { ...plain.scene, switches: { A: 'on', B: 'on' } };
    expect(told({ ...plain, call: asked }, { ...plain, scene })).toEqual([]);
  });

  test('more than three changes from step to step', () => {
    const scene = { locos: { Plover: 'C', Heron: 'D' }, controller: 0, switches: { B: 'on' } };
    expect(told(plain, { ...plain, scene }).join()).toMatch(/5 things change/);
  });

  test('no call in the whole', () => {
    expect(advice(walk(plain))).toEqual([
      { words: 'No call in the whole: ask the reader once what will happen, best about half way.' }
    ]);
    expect(advice(walk({ ...plain, call: asked }))).toEqual([]);
  });

  test.each<readonly [string, object, RegExp]>([
    [
      'nothing is done',
      { call: { ask: 'What does Heron do?', about: ['Heron'] } },
      /Nothing is done/
    ],
    [
      'what is done stands already',
      { call: { ...asked, do: { switch: { A: 'on' } } } },
      /Nothing is done/
    ],
    [
      'the limit acts already',
      {
        scene: { ...plain.scene, edits: [{ metal: 'rails of A' }] },
        call: { ask: 'Does it limit?', do: { switch: { B: 'on' } }, limit: 'controller' }
      },
      /stands on the board already/
    ],
    [
      'the words tell it',
      { words: 'Heron goes east when its road is on.', lit: ['road B'], call: asked },
      /tell the answer/
    ],
    ['a loco that is not there', { call: { ...asked, about: ['Dunlin'] } }, /cannot be asked here/],
    ['no question', { call: { ...asked, ask: '' } }, /has no words/]
  ])('a call of which %s', (_, change, words) => {
    expect(told({ ...plain, ...change }).join('\n')).toMatch(words);
  });
});
