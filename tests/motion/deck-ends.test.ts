import { describe, expect, test } from 'vitest';
import { driveTo, TICKS_PER_SECOND } from '../../src/lib/motion';
import { act, read, RefusedError, type Action, type Scene } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { sceneOf, thrown, yardOf, type SceneInput } from '../yard/build';
import { at, of, quay, run } from './quay';

const east = { controller: 0.6 };
const west = { controller: -0.6 };

describe('driveTo(scene): an opening out of line', () => {
  test.each<[what: string, input: SceneInput, road: string, end: 'east' | 'west', atMm: number]>([
    [
      'from the Quay line, nothing facing',
      { ...east, deck: -140, locos: { Plover: { road: 'Q', atMm: 2300 } } },
      'Q',
      'east',
      2400 - 15
    ],
    [
      'from D, 5 mm from stabling road 1',
      { ...east, deck: -140, locos: { Plover: { road: 'D', atMm: 1100 } } },
      'D',
      'east',
      1200 - 15
    ],
    [
      'from C, 10 mm from the Quay line',
      { ...west, deck: -110, locos: { Plover: { road: 'C', atMm: 100 } } },
      'C',
      'west',
      15
    ]
  ])('%s: it falls as its first pick-up leaves the rails', (_, input, ...[road, end, atMm]) => {
    const { scene, events } = run(at(input), 2);
    expect(events).toMatchObject([{ kind: 'gap', loco: 'Plover', road, end }]);
    expect(of(scene, 'Plover')).toMatchObject({ road, fallen: true, speed: 0 });
    near(of(scene, 'Plover').atMm, atMm, { abs: (1000 * 0.11) / TICKS_PER_SECOND });
  });

  test('the drive stands still after, the other locos too', () => {
    const locos = { Plover: { road: 'Q', atMm: 2300 }, Dunlin: { road: 'B', atMm: 200 } };
    const over = run(at({ ...east, deck: -140, locos }), 2);
    const later = driveTo(quay, over, 30);
    expect(later).toEqual({ ...over, tick: 30 * TICKS_PER_SECOND });
    expect(of(over.scene, 'Dunlin').atMm).toBeGreaterThan(210);
    expect(read(quay, over.scene).circuit.elements.map(({ id }) => id)).not.toContain('Plover');
  });

  test('the interlock keeps a stabled loco from it; without, it runs out and falls', () => {
    const input = { ...west, deck: 'C', switches: { 2: true }, locos: { Plover: '2' } };
    expect(run(at(input), 3).scene.locos).toEqual(at(input).locos);
    const open = yardOf({ deckRoads: 5, stablingRoads: 4, interlocked: false });
    const fell = driveTo(open, { tick: 0, scene: sceneOf(open, input), events: [] }, 3);
    expect(fell.events).toMatchObject([{ kind: 'gap', road: '2', end: 'west' }]);
  });
});

describe('driveTo(scene): a barrier', () => {
  test.each<[SceneInput, 'east' | 'west', number]>([
    [{ ...east, deck: 'A', locos: { Plover: { road: 'C', atMm: 1000 } } }, 'east', 1200 - 47.5],
    [{ ...west, deck: 'A', locos: { Plover: { road: 'C', atMm: 200 } } }, 'west', 47.5],
    [{ ...east, deck: 'C', locos: { Plover: { road: 'C', atMm: 1000 } } }, 'east', 1200 - 47.5],
    [{ ...west, deck: -140, locos: { Plover: { road: 'D', atMm: 200 } } }, 'west', 47.5]
  ])('%j: it stalls with its buffers there, at U/R', (input, end, atMm) => {
    const { scene, events } = run(at(input), 4);
    expect(events).toMatchObject([{ kind: 'barrier', loco: 'Plover', end }]);
    expect(of(scene, 'Plover')).toMatchObject({ atMm, speed: 0, fallen: false });
    const { amps, between } = read(quay, scene);
    const { road } = of(scene, 'Plover');
    near(amps('Plover'), (between(`feed rail ${road}`, `return rail ${road}`) ?? NaN) / 20, {
      rel: 1e-9
    });
  });
});

/** Plover runs from the Quay line onto R, on which Heron is held at the far barrier. */
const meeting = (): Scene =>
  at({
    ...east,
    deck: 'R',
    locos: { Plover: { road: 'Q', atMm: 2300 }, Heron: { road: 'R', atMm: 1095 } }
  });

describe('driveTo(scene): a bump', () => {
  test('into stock over an aligned joint, buffer to buffer', () => {
    const locos = { Plover: { road: 'Q', atMm: 2200 }, Heron: { road: 'R', atMm: 130 } };
    const { scene, events } = run(at({ ...east, deck: 'R', switches: {}, locos }), 4);
    expect(events).toMatchObject([
      { kind: 'bump', loco: 'Plover', other: 'Heron', end: 'east', road: 'Q' }
    ]);
    expect(of(scene, 'Plover')).toMatchObject({ road: 'Q', speed: 0 });
    near(of(scene, 'Plover').atMm, 2400 + 130 - 105 - 47.5, { abs: 1e-9 });
    expect(of(scene, 'Heron').atMm).toBe(130);
  });

  test('not into stock on another road', () => {
    const locos = { Plover: { road: 'Q', atMm: 2200 }, Heron: { road: 'E', atMm: 130 } };
    const { events } = run(at({ ...east, deck: 'R', switches: { R: true }, locos }), 4);
    expect(events).toMatchObject([{ kind: 'joint', loco: 'Plover', road: 'R' }]);
  });

  test('into stock on the same road, once it has come onto it', () => {
    const { scene, events } = run(meeting(), 12);
    expect(events.filter(({ loco }) => loco === 'Plover')).toMatchObject([
      { kind: 'joint', road: 'R' },
      { kind: 'bump', other: 'Heron', road: 'R', end: 'east' }
    ]);
    near(of(scene, 'Plover').atMm, 1095 - 105 - 47.5, { abs: 1e-9 });
    expect(of(scene, 'Plover').speed).toBe(0);
  });

  test('hands can go on after it: the knob turned, Plover backs off', () => {
    const { scene } = run(meeting(), 12);
    const back = run(act(quay, scene, { controller: -0.6 }), 1).scene;
    expect(of(back, 'Plover').atMm).toBeLessThan(of(scene, 'Plover').atMm - 50);
  });
});

describe('act(scene, action): what hands cannot do', () => {
  const standing = (locos: SceneInput['locos'], more: SceneInput = {}) =>
    at({ deck: 'C', pin: 'out', locos, ...more });
  test.each<[what: string, scene: Scene, action: Action, why: RegExp]>([
    ['move a pinned deck', standing({}, { pin: 'home' }), { deck: -60 }, /pinned/],
    ['pin where there is no hole', standing({}, { deck: -140 }), { pin: 'home' }, /no hole/],
    ['slide to no hole and pin', standing({}), { deck: -140, pin: 'home' }, /no hole/],
    [
      'move it under wheels',
      standing({ Plover: { road: 'Q', atMm: 2390 } }),
      { deck: 0 },
      /Plover/
    ],
    ['… on the deck', standing({ Plover: { road: 'C', atMm: 10 } }), { deck: 0 }, /Plover/],
    [
      '… at a stabling road',
      standing({ Avocet: { road: 'R', atMm: 1150 } }, { deck: '2' }),
      { deck: -230 },
      /Avocet/
    ],
    [
      'move it under a body whose wheels are clear',
      standing({ Heron: { road: 'C', atMm: 50 } }),
      { deck: 0 },
      /Heron/
    ],
    [
      'move it under a body that reaches in from a fixed road',
      standing({ Plover: { road: 'Q', atMm: 2380 } }, { deck: -140 }),
      { deck: 'R' },
      /Plover/
    ]
  ])('%s: refused, the scene as it was', (_, scene, action, why) => {
    const before = JSON.stringify(scene);
    const error = thrown(() => act(quay, scene, action));
    expect(error).toBeInstanceOf(RefusedError);
    expect((error as RefusedError).why).toMatch(why);
    expect(JSON.stringify(scene)).toBe(before);
  });
});

describe('act(scene, action): the deck', () => {
  const locos = { Plover: { road: 'C', atMm: 300 }, Heron: 'R', Dunlin: 'Q', Curlew: '3' };
  const scene = at({ deck: 'C', pin: 'home', locos });

  test('carries its locos, and leaves the others where they are', () => {
    for (const deck of ['A', '2', 'R', -140, -95]) {
      const moved = act(quay, scene, { pin: 'out', deck });
      expect(moved).toEqual({ ...scene, pin: 'out', deck: moved.deck });
      expect(moved.deck).not.toBe(scene.deck);
    }
  });

  test('is unpinned, moved and pinned again in one go', () => {
    expect(act(quay, scene, { deck: '2', pin: 'home' })).toMatchObject({ deck: -220, pin: 'home' });
  });
});
