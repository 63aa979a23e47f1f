import { expect, test } from 'vitest';
import { admitWalk, changesOf, changeWords } from '../../src/lib/walk';
import { sampleFile, sampleWalk } from './sample';

const sceneOf = (scene: object, yard: object = sampleFile.yard) => {
  const walk = admitWalk({ ...sampleFile, yard, steps: [{ heading: '', words: '', scene }] });
  return { yard: walk.yard, scene: (walk.steps[0] as (typeof walk.steps)[number]).scene };
};

/** What two scenes differ in, in words. */
function words(before: object, after: object, yard?: object): string {
  const [from, to] = [sceneOf(before, yard), sceneOf(after, yard)];
  return changeWords(changesOf(to.yard, from.scene, to.scene));
}

test.each([
  [{}, { switches: { B: 'on' } }, 'Changed: toggle B is on.'],
  [{ switches: { B: 'on' } }, {}, 'Changed: toggle B is off.'],
  [{}, { switches: { B: false } }, ''],
  [{}, { pin: 'out' }, 'Changed: the pin is out.'],
  [{}, { plug: 'out' }, 'Changed: the plug is out.'],
  [{}, { deck: 'B' }, 'Changed: the deck brings B to Q.'],
  [{}, { deck: -30 }, 'Changed: the deck is between its stops and the pin is out.'],
  [{}, { controller: '60% east' }, 'Changed: the knob is at 7.2 V east.'],
  [{}, { supply: 'off' }, 'Changed: the supply is off.'],
  [{}, { locos: { Plover: 'A' } }, 'Changed: Plover stands on road A.'],
  [{ locos: { Plover: 'A' } }, {}, 'Changed: Plover is gone.'],
  [{ locos: { Plover: 'A' } }, { locos: { Plover: 'C' } }, 'Changed: Plover stands on road C.'],
  [{}, { edits: [{ off: 'return dropper A' }] }, 'Changed: the return dropper A is off.'],
  [{ edits: [{ off: 'return dropper A' }] }, {}, 'Changed: no longer: the return dropper A is off.']
])('from %j to %j', (before, after, said) => {
  expect(words(before, after)).toBe(said);
});

test('a rotary switch is told by where it points', () => {
  const yard = { deckRoads: 3, switching: 'rotary' };
  expect(words({}, { selector: 'B' }, yard)).toBe('Changed: the selector is at B.');
});

test('many changes are told in part, and counted', () => {
  const switches = Object.fromEntries(
    ['A', 'B', 'C', 'D', 'E', 'R', '1', '2'].map((r) => [r, 'on'])
  );
  expect(words({}, { switches })).toMatch(/toggle R is on and 2 more\.$/);
});

test('each step of the sample tells what differs from the one before, and where', () => {
  const [first, second, third] = sampleWalk.steps.map(({ scene }) => scene);
  if (!first || !second || !third) throw new Error('The sample has three steps.');
  expect(changesOf(sampleWalk.yard, first, second).map(({ place }) => place)).toEqual(['toggle A']);
  expect(changesOf(sampleWalk.yard, second, third).map(({ place }) => place)).toEqual([
    'toggle B',
    'deck',
    'plug',
    'Heron'
  ]);
});
