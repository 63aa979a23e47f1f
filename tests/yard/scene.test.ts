import { describe, expect, test } from 'vitest';
import { admit, BorderError, SceneSchema } from '../../src/lib/yard';
import { moment, sceneOf, thrown, yardOf } from './build';

describe('admit(SceneSchema)', () => {
  test.each([
    ['60% east', 0.6],
    ['40 % west', -0.4],
    ['centre', 0],
    ['100% west', -1],
    [0.25, 0.25],
    [-1, -1]
  ])('reads the knob %j as %d', (controller, setting) => {
    expect(sceneOf(yardOf(), { controller }).controller).toBe(setting);
  });

  test.each(['150% east', '60%', 'east', '60% north', 1.01, -2, '-60% east', true])(
    'refuses the knob %j',
    (controller) => {
      expect(() => admit('scene', SceneSchema, { controller })).toThrow(
        "allowed: '60% east', '40% west', 'centre' or a number from -1 (west) to 1 (east)."
      );
    }
  );

  test.each([
    ['on', true],
    ['off', false],
    [true, true],
    [false, false]
  ] as const)('reads a switch %j as closed: %j', (word, closed) => {
    expect(sceneOf(yardOf(), { switches: { A: word } }).switches).toEqual({ A: closed });
  });

  test.each(['yes', 1, 'ON', null])('refuses a switch %j', (word) => {
    expect(() => admit('scene', SceneSchema, { switches: { A: word } })).toThrow(
      'scene › switches › A: met '
    );
    expect(() => admit('scene', SceneSchema, { switches: { A: word } })).toThrow(
      'allowed: on or off.'
    );
  });

  test('admits itself again', () => {
    const { yard, scene } = moment(
      { deckRoads: 3 },
      { controller: '40% west', switches: { B: 'on' }, locos: { Plover: 'B' } }
    );
    expect(sceneOf(yard, JSON.parse(JSON.stringify(scene)))).toEqual(scene);
  });

  test('shows every kind of edit when it meets none of them', () => {
    expect(() => admit('scene', SceneSchema, { edits: [{ cut: 'feed wire' }] })).toThrow(
      'scene › edits › 0: met {"cut":"feed wire"}, allowed: an edit: {"off":"return dropper A"} or'
    );
  });
});

describe('fit(scene, yard)', () => {
  test('stands a loco in the middle of its road, facing east, at rest', () => {
    const { scene } = moment({ deckRoads: 2, roadLengthMm: 1000 }, { locos: { Heron: 'B' } });
    expect(scene.locos).toEqual({
      Heron: { road: 'B', atMm: 500, faces: 'east', speed: 0, fallen: false }
    });
  });

  test('keeps the whole loco on its rails', () => {
    const at = (atMm: number) =>
      moment({}, { locos: { Heron: { road: 'A', atMm } } }).scene.locos['Heron']?.atMm;
    expect([at(-50), at(0), at(300), at(5000)]).toEqual([105, 105, 300, 1095]);
  });

  test.each([
    [
      'an unknown loco',
      { locos: { Plovr: 'A' } },
      "scene › locos › Plovr: met unknown loco 'Plovr', allowed: Plover, Heron, Curlew, Dunlin, Avocet."
    ],
    [
      'an unknown road',
      { locos: { Plover: 'Z' } },
      "scene › locos › Plover: met road 'Z', allowed: A, B, C."
    ],
    [
      'two locos on one road',
      { locos: { Plover: 'B', Heron: 'B' } },
      'scene › locos › Heron: met road B, where Plover stands, allowed: a road of its own.'
    ],
    [
      'an unknown toggle',
      { switches: { D: 'on' as const } },
      "scene › switches › D: met a toggle 'D', allowed: A, B, C."
    ]
  ])('refuses %s', (_, input, message) => {
    const error = thrown(() => moment({ deckRoads: 3 }, input));
    expect(error).toBeInstanceOf(BorderError);
    expect((error as BorderError).message).toBe(message);
  });

  test('refuses a toggle of the running road, and any in a yard without toggles', () => {
    const on = (road: string) => ({ switches: { [road]: true } });
    expect(() => moment({ deckRoads: 1, runningRoad: true }, on('Q'))).toThrow('allowed: A.');
    expect(() => moment({ switching: 'none' }, on('A'))).toThrow(
      'allowed: no toggles in this yard.'
    );
  });
});
