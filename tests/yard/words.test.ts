import { describe, expect, test } from 'vitest';
import {
  act,
  actionWords,
  ampsText,
  joinWords,
  knobWords,
  levelWords,
  locoNamed,
  locoNames,
  sceneWords,
  startingVolts,
  voltsText
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment } from './build';

describe('words', () => {
  test('joinWords: commas, and the last word before the last', () => {
    expect(joinWords([], 'and')).toBe('');
    expect(joinWords(['A'], 'and')).toBe('A');
    expect(joinWords(['A', 'B'], 'and')).toBe('A and B');
    expect(joinWords(['A', 'B', 'C'], 'or')).toBe('A, B or C');
  });

  test('voltsText, ampsText: size only, with unit', () => {
    expect([voltsText(-7.25), voltsText(0), ampsText(0.204), ampsText(-1.5)]).toEqual([
      '7.3 V',
      '0.0 V',
      '0.20 A',
      '1.50 A'
    ]);
  });

  test.each([
    [0.6, 12, '7.2 V east'],
    [-0.25, 12, '3.0 V west'],
    [0, 12, 'centre: no volts'],
    [0.004, 12, 'centre: no volts']
  ])('knobWords(%d of %d V)', (setting, fullVolts, words) => {
    expect(knobWords(setting, fullVolts)).toBe(words);
  });

  test.each([
    [{ switch: { A: true } }, 'You switch road A on.'],
    [{ switch: { A: false, B: true } }, 'You switch road A off. You switch road B on.'],
    [{ controller: -0.4 }, 'You turn the knob to 40 % west.'],
    [{ controller: 0 }, 'You turn the knob to centre.'],
    [{ edits: [{ off: 'feed wire' }] }, 'The feed wire is off.'],
    [
      { switch: { A: true }, controller: 1, edits: [{ metal: 'toggle B' }] },
      'You switch road A on. You turn the knob to 100 % east. Metal lies across toggle B.'
    ]
  ])('actionWords(%j)', (action, words) => {
    expect(actionWords(action)).toBe(words);
  });

  test.each([
    [{ deck: '2' }, /deck.*2/],
    [{ pin: 'home' as const }, /pin.*home/],
    [{ pin: 'out' as const }, /pin.*out/],
    [{ plug: 'out' as const }, /plug.*out/]
  ])('actionWords(%j) tells it too', (action, words) => {
    expect(actionWords(action)).toMatch(words);
  });

  test.each([
    [
      { deckRoads: 2 },
      { locos: { Plover: 'A', Heron: 'B' }, switches: { B: true }, controller: 0.6 },
      'Here is Plover on road A and Heron on road B. Switched on: B. The knob is at 60 % east.'
    ],
    [{ deckRoads: 1 }, {}, 'All toggles are off. The knob is at centre.'],
    [
      { deckRoads: 2, switching: 'none' as const, return: 'ring' as const },
      { controller: -1, edits: [{ off: 'closing link' }] },
      'The knob is at 100 % west. The return is a ring. The closing link is off.'
    ]
  ])('sceneWords(%j, %j)', (yardInput, sceneInput, words) => {
    const { yard, scene } = moment(yardInput, sceneInput);
    expect(sceneWords(yard, scene)).toBe(words);
  });

  test('levelWords: a rail half way is nearer to one terminal', () => {
    const through = ['Plover', 'Heron'];
    expect(levelWords({ joined: 'through', share: 0.51, through })).toBe(
      'at feed level, only through Plover and Heron'
    );
    expect(levelWords({ joined: 'through', share: undefined, through: ['Heron'] })).toBe(
      'at return level, only through Heron'
    );
  });
});

describe('locoNamed(name)', () => {
  // The demo scenario's table, "starts at": light current × armature.
  test.each([
    ['Plover', 3.6],
    ['Heron', 4.5],
    ['Curlew', 3.1],
    ['Dunlin', 2.9],
    ['Avocet', 4.9]
  ])('%s starts at %d V', (name, volts) => {
    near(startingVolts(locoNamed(name)), volts, { abs: 0.05 });
  });

  test('an unknown name is refused with those there are', () => {
    expect(() => locoNamed('Plovr')).toThrow(
      "Unknown loco 'Plovr'. There are Plover, Heron, Curlew, Dunlin, Avocet."
    );
    expect(locoNames).toHaveLength(5);
  });
});

describe('act(scene, action)', () => {
  const { yard, scene } = moment(
    { deckRoads: 3 },
    {
      switches: { A: true },
      controller: 0.5,
      locos: { Plover: 'A' },
      edits: [{ off: 'feed wire' }]
    }
  );

  test('throws the toggles it names and leaves the rest', () => {
    const after = act(yard, scene, { switch: { B: true } });
    expect(after.switches).toEqual({ A: true, B: true });
    expect({ ...after, switches: scene.switches }).toEqual(scene);
  });

  test('turns the knob; its edits replace the old ones', () => {
    expect(act(yard, scene, { controller: -1 }).controller).toBe(-1);
    expect(act(yard, scene, { edits: [] }).edits).toEqual([]);
    expect(scene.edits).toHaveLength(1);
  });

  test('a toggle that is not there is refused', () => {
    expect(() => act(yard, scene, { switch: { Z: true } })).toThrow(
      "action › switches › Z: met a toggle 'Z', allowed: A, B, C."
    );
  });
});
