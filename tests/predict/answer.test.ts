import { describe, expect, test } from 'vitest';
import type { Edit } from '../../src/lib/yard';
import { answers, type BoardInput, type QuestionInput } from './build';

/** Plover on A, Heron on B, both off, knob at 60 % east. */
const two = { locos: { Plover: 'A', Heron: 'B' }, controller: '60% east' };
const on = { switches: { A: true, B: true } };

describe('answer(about): what a loco does', () => {
  test.each<[string, BoardInput['scene'], QuestionInput['do'], Record<string, string>]>([
    ['its toggle on: it goes', two, { switch: { A: 'on' } }, { Plover: 'east', Heron: 'stays' }],
    ['nothing done, all off', two, undefined, { Plover: 'stays', Heron: 'stays' }],
    ['nothing done, all on', { ...two, ...on }, undefined, { Plover: 'east', Heron: 'east' }],
    [
      'the knob turned west',
      { ...two, ...on },
      { controller: '60% west' },
      { Plover: 'west', Heron: 'west' }
    ],
    ['too few volts', { ...two, ...on }, { controller: 0.2 }, { Plover: 'stays', Heron: 'stays' }],
    [
      'enough for one, not for the other',
      { ...two, ...on },
      { controller: 0.35 },
      { Plover: 'east', Heron: 'stays' }
    ],
    [
      'the return wire off',
      { ...two, ...on },
      { edits: [{ off: 'return wire' }] },
      { Plover: 'stays', Heron: 'stays' }
    ]
  ])('%s', (_, scene, action, expected) => {
    const question = { about: ['Plover', 'Heron'], ...(action && { do: action }) };
    expect(answers(question, { scene: { ...scene } })).toEqual(expected);
  });
});

describe('answer(compare speed): against before', () => {
  const alone = {
    yard: { deckRoads: 1 },
    scene: { locos: { Plover: 'A' }, switches: { A: true } }
  };
  const speed = (
    scene: BoardInput['scene'],
    action: QuestionInput['do'],
    yard: BoardInput['yard'] = alone.yard
  ) =>
    answers(
      { do: action, compare: { speed: 'Plover' } },
      { yard, scene: { ...alone.scene, controller: 0.6, ...scene } }
    );

  test.each<[string, QuestionInput['do'], string]>([
    ['switched off', { switch: { A: 'off' } }, 'stops'],
    ['a resistor put in', { edits: [{ resistor: 8, in: 'feed wire' }] }, 'slower'],
    ['a meter put in', { edits: [{ meter: 'out', in: 'feed wire' }] }, 'about the same'],
    ['metal on a closed toggle', { edits: [{ metal: 'toggle A' }] }, 'about the same'],
    ['the knob turned up', { controller: '70% east' }, 'faster']
  ])('%s: %s', (_, action, expected) => {
    expect(speed({}, action)).toEqual({ Plover: expected });
  });

  test('from rest to running is faster; from rest to rest is a stop', () => {
    expect(speed({ switches: {} }, { switch: { A: 'on' } })).toEqual({ Plover: 'faster' });
    expect(speed({ switches: {} }, { controller: 0.5 })).toEqual({ Plover: 'stops' });
  });

  test('a resistor moved from feed to return changes nothing', () => {
    const put = (place: string): Edit[] => [{ resistor: 10, in: place }];
    expect(speed({ edits: put('feed wire') }, { edits: put('return wire') })).toEqual({
      Plover: 'about the same'
    });
  });
});

describe('answer(compare meter): one meter against another', () => {
  const meters: Edit[] = [
    { meter: 'one', in: 'return dropper A' },
    { meter: 'two', in: 'return dropper B' },
    { meter: 'both', in: 'return wire' }
  ];
  const reads = (meter: string, other: string, switches: Record<string, boolean>) =>
    answers({ compare: { meter, with: other } }, { scene: { ...two, switches, edits: meters } })[
      `meter ${meter}`
    ];

  test.each<[string, string, Record<string, boolean>, string]>([
    ['one', 'both', { A: true, B: false }, 'the same'],
    ['two', 'both', { A: true, B: false }, 'nothing'],
    ['one', 'both', { A: true, B: true }, 'less'],
    ['both', 'two', { A: true, B: true }, 'more'],
    ['one', 'two', { A: true, B: true }, 'less']
  ])('%s with %s, toggles %j: %s', (meter, other, switches, expected) => {
    expect(reads(meter, other, switches)).toBe(expected);
  });
});

describe('answer(limit): does the controller limit', () => {
  const metal = { edits: [{ metal: 'rails of B' }] };
  const limit = (action: QuestionInput['do'], switches: Record<string, boolean>) =>
    answers({ do: action, limit: 'controller' }, { scene: { ...two, switches } })['controller'];

  test.each<[string, QuestionInput['do'], Record<string, boolean>, string]>([
    ['metal on live rails', metal, { A: true, B: true }, 'it limits'],
    ['metal on dead rails', metal, { A: true }, 'it goes on as before'],
    ['one more loco', { switch: { B: true } }, { A: true }, 'it goes on as before']
  ])('%s: %s', (_, action, ...[switches, expected]) => {
    expect(limit(action, switches)).toBe(expected);
  });

  test('which of these would make it limit', () => {
    const of = { live: { edits: [{ metal: 'rails of A' }] }, dead: metal };
    const scene = { ...two, switches: { A: true } };
    expect(answers({ which: { would: 'limit', of } }, { scene })).toEqual({ controller: 'live' });
  });
});

describe('answer(which): what would make it run, or stop it', () => {
  const off = (place: string) => ({ edits: [{ off: place }] });
  const which = (would: 'run' | 'stop', of: Record<string, object>, scene: BoardInput['scene']) =>
    answers(
      { which: { loco: 'Plover', would, of, each: 'either', none: 'neither' } },
      { scene: { ...two, ...scene } }
    )['Plover'];

  test.each([
    ['one of two', { own: off('feed dropper A'), other: off('feed dropper B') }, 'own'],
    ['each', { feed: off('feed wire'), home: off('return wire') }, 'either'],
    ['none', { B: { switch: { B: 'off' } }, same: { controller: 0.6 } }, 'neither']
  ])('stop, %s', (_, of, expected) => {
    expect(which('stop', of, on)).toBe(expected);
  });

  test('stop, two of three: no option says so, and the question is refused', () => {
    const of = { a: off('feed wire'), b: { controller: 'centre' }, c: off('feed dropper B') };
    expect(() => which('stop', of, on)).toThrow("without the engine's answer 'a and b'");
  });

  test('run: what closes the loop, and nothing that opens it more', () => {
    const of = { A: { switch: { A: 'on' } }, B: { switch: { B: 'on' } } };
    expect(which('run', of, {})).toBe('A');
    expect(which('run', { wire: off('feed wire'), drop: off('return dropper A') }, {})).toBe(
      'neither'
    );
  });
});
