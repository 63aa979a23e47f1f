import type * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { designations } from '../../src/lib/book/designations';
import { diagramLayout } from '../../src/lib/draw/diagram';
import { detours } from '../../src/lib/draw/detours';
import { crossings } from '../../src/lib/draw/crossings';
import { admit, fit, read, SceneSchema, YardSchema, type YardInput } from '../../src/lib/yard';

type SceneInput = v.InferInput<typeof SceneSchema>;

function drawn(yardInput: YardInput, sceneInput: Omit<SceneInput, 'version'>) {
  const yard = admit('yard', YardSchema, yardInput);
  const scene = fit('scene', yard, admit('scene', SceneSchema, { version: 1, ...sceneInput }));
  const { runs } = read(yard, scene);
  const layout = diagramLayout(yard, runs, { scene, width: 600 });
  return { yard, runs, layout };
}

describe('designations(yard, runs, locos)', () => {
  // Source: IEC 81346-2:2009: G supply, S manual switch, B position switch, X plug, M motor, R resistor.
  test('give each part the letter of its class and a number, plug contacts the number of the pin', () => {
    const { yard, runs } = drawn(
      { deckRoads: 1, stablingRoads: 1, runningRoad: 'none' },
      {
        edits: [
          { resistor: 5, in: 'feed dropper A' },
          { meter: 'out', in: 'feed wire' }
        ]
      }
    );
    const all = Object.fromEntries(
      designations(yard, runs, ['Plover']).map(({ place, text }) => [place, text])
    );
    expect(all).toEqual({
      controller: '−G1',
      'toggle A': '−S1',
      'toggle R': '−S2',
      'toggle 1': '−S3',
      'pin contact 1': '−B1',
      'plug A': '−X1:1',
      'plug R': '−X1:2',
      'plug return 1': '−X1:3',
      'plug return 2': '−X1:4',
      Plover: '−M1',
      'resistor in feed dropper A': '−R1',
      'meter out': '−P1'
    });
  });
});

describe('diagramLayout(yard, runs)', () => {
  test.each<[string, YardInput, Omit<SceneInput, 'version'>]>([
    ['a chain', { deckRoads: 3 }, { locos: {} }],
    ['a ring', { deckRoads: 3, return: 'ring' }, {}],
    ['a star', { deckRoads: 3, return: 'star' }, {}],
    ['a moving deck', { deckRoads: 5, stablingRoads: 4 }, {}],
    [
      'swapped droppers, metal and a held meter',
      { deckRoads: 2 },
      {
        edits: [
          { move: 'feed dropper A', to: 'return' },
          { move: 'return dropper A', to: 'feed' },
          { metal: 'rails of B' },
          { metal: 'toggle B' },
          { volts: ['feed', 'return rail B'] }
        ]
      }
    ]
  ])(
    'of %s: every part has its place in the picture, and no two of them the same one',
    (_, ...given) => {
      const { runs, layout } = drawn(...given);
      const ids = runs.flatMap((run) => run.parts.map(({ id }) => id));
      expect(ids.filter((id) => !layout.anchors.has(id))).toEqual([]);
      const spots = ids
        .filter((id) => /^(toggle|pin contact|plug|meter|metal)/.test(id))
        .map((id) => layout.anchors.get(id));
      for (const spot of spots) {
        expect(spot?.x).toBeGreaterThan(0);
        expect(spot?.x).toBeLessThan(layout.width);
        expect(spot?.y).toBeGreaterThan(0);
        expect(spot?.y).toBeLessThan(layout.height);
      }
      const keys = spots.map((spot) => `${spot?.x} ${spot?.y}`);
      expect(new Set(keys).size).toBe(keys.length);
    }
  );
});

describe('detours(runs, order)', () => {
  const { runs } = drawn({ deckRoads: 3 }, {});

  test('are none where rows stand as they are wired', () => {
    expect(detours(runs, ['A', 'B', 'C'])).toEqual([]);
  });

  test('lie side by side where two wires pass the same row', () => {
    const lanes = Object.fromEntries(
      detours(runs, ['C', 'A', 'B']).map(({ id, lane }) => [id, lane])
    );
    expect(Object.keys(lanes).sort()).toEqual([
      'feed link B-C',
      'feed wire',
      'loop link B-C',
      'return wire'
    ]);
    expect(lanes['feed wire']).not.toBe(lanes['feed link B-C']);
    expect(lanes['return wire']).not.toBe(lanes['loop link B-C']);
  });
});

describe('crossings(conductors)', () => {
  const line = (key: string, ...points: [number, number][]) => ({
    key,
    square: true,
    amps: 0.2,
    line: points.map(([x, y]) => ({ x, y }))
  });

  test('draw the level wire once more where it passes an upright one', () => {
    const over = crossings([
      line('level', [0, 50], [100, 50]),
      line('upright', [40, 0], [40, 100])
    ]);
    expect(over.map((each) => each.line)).toEqual([
      [
        { x: 31, y: 50 },
        { x: 49, y: 50 }
      ]
    ]);
  });

  test('are none at a joint, where one wire ends on the other', () => {
    expect(
      crossings([line('level', [40, 50], [100, 50]), line('upright', [40, 0], [40, 100])])
    ).toEqual([]);
  });
});
