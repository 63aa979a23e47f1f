import { describe, expect, test } from 'vitest';
import { driveTo, gapWords, start } from '../../src/lib/motion';
import { act, vehicles, type Scene, type Yard } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { sceneOf, thrown, yardOf, type SceneInput } from '../yard/build';
import { at, of, quay, run } from './quay';

/** The deck stands between its stops; the approach section Q2 is fed through the pin's contact, Q1 by its toggle. */
const guarded = yardOf({
  deckRoads: 5,
  stablingRoads: 4,
  runningRoad: 'interlocked',
  cuts: [{ road: 'Q', atMm: 2100 }]
});
const towards = (stock: SceneInput['stock'], yard: Yard = guarded) =>
  driveTo(
    yard,
    start(
      sceneOf(yard, {
        deck: -140,
        controller: 0.8,
        switches: { Q1: true, Q2: true },
        locos: { Heron: { road: 'Q1', atMm: 1600 } },
        stock
      })
    ),
    6
  );

describe('a train before a dead section', () => {
  test('truth 12: a propelled train is not stopped by a dead section until its loco enters', () => {
    const { scene, events } = towards({ coach: { ahead: 'Heron' } });
    expect(events.at(-1)).toMatchObject({ kind: 'gap', loco: 'coach', road: 'Q2', end: 'east' });
    expect(scene.stock.coach?.fallen).toBe(true);
    expect(of(scene, 'Heron')).toMatchObject({ road: 'Q1', fallen: false });
    expect(gapWords(guarded, scene)).toBe(
      'The coach fell into the gap: it was pushed by Heron, whose road Q1 was live.'
    );
  });

  test('the same train pulled stops with the loco’s last wheels in it', () => {
    const { scene, events } = towards({ wagon: { behind: 'Heron' } });
    expect(events.map(({ kind }) => kind)).toEqual(['joint']);
    expect(of(scene, 'Heron')).toMatchObject({ road: 'Q2', speed: 0, fallen: false });
    // Its last pick-up stands 30 mm behind its middle; it coasts a few mm.
    expect(of(scene, 'Heron').atMm).toBeGreaterThan(30);
    expect(of(scene, 'Heron').atMm).toBeLessThan(36);
  });

  test('a lit coach behind it feeds the dead section on: the loco goes on until the coach is in it', () => {
    const pulled = towards({ coach: { behind: 'Heron' } });
    expect(of(pulled.scene, 'Heron').road).toBe('Q2');
    expect(pulled.events.map(({ kind }) => kind)).toEqual(['joint']);
    expect(of(pulled.scene, 'Heron').atMm).toBeLessThan(36);
    const wide = towards({ wagon: { behind: 'Heron' }, coach: { ahead: 'Heron' } });
    expect(wide.events.at(-1)).toMatchObject({ kind: 'gap', loco: 'coach' });
  });
});

describe('a train moves as one', () => {
  const train = { coach: { behind: 'Heron' }, 'coach 2': { behind: 'coach' } };
  const drive = (seconds: number, more: SceneInput = {}) =>
    run(
      at({
        deck: 'C',
        controller: 0.6,
        locos: { Heron: { road: 'Q', atMm: 2000 } },
        stock: train,
        ...more
      }),
      seconds
    );

  test('its vehicles keep their distances over a joint, at one speed', () => {
    const { scene, events } = drive(8);
    const along = (name: string): number => {
      const { road, atMm } = vehicles(scene)[name] ?? expect.fail(name);
      return road === 'Q' ? atMm - 2400 : atMm;
    };
    near(along('Heron') - along('coach'), 225, { abs: 1e-6 });
    near(along('coach') - along('coach 2'), 240, { abs: 1e-6 });
    expect(new Set(Object.values(vehicles(scene)).map(({ speed }) => speed)).size).toBe(1);
    expect(events.map(({ kind, loco }) => `${kind} ${loco}`)).toEqual([
      'joint Heron',
      'joint coach'
    ]);
  });

  test('a heavier train runs up more slowly, to the same speed', () => {
    const alone = { stock: {} };
    const wagons = { stock: { wagon: { behind: 'Heron' }, 'wagon 2': { behind: 'wagon' } } };
    expect(of(drive(0.05, wagons).scene, 'Heron').speed).toBeLessThan(
      of(drive(0.05, alone).scene, 'Heron').speed
    );
    near(of(drive(2, wagons).scene, 'Heron').speed, of(drive(2, alone).scene, 'Heron').speed, {
      rel: 1e-3
    });
  });

  test('whichever vehicle leads meets the barrier, once', () => {
    const pushed = run(
      at({
        deck: 'A',
        controller: 0.6,
        locos: { Heron: { road: 'C', atMm: 700 } },
        stock: { wagon: { ahead: 'Heron' } }
      }),
      6
    );
    expect(pushed.events).toMatchObject([{ kind: 'barrier', loco: 'wagon', road: 'C' }]);
    expect(pushed.scene.stock.wagon?.atMm).toBe(1200 - 40);
  });

  test('a loco that presses on other stock is told of once', () => {
    const locos = { Plover: { road: 'C', atMm: 300 } };
    const press = run(at({ deck: 'A', controller: 0.6, locos, stock: { wagon: 'C' } }), 6);
    expect(press.events).toMatchObject([{ kind: 'bump', loco: 'Plover', other: 'wagon' }]);
    expect(press.events).toHaveLength(1);
    expect(press.scene.stock.wagon).toMatchObject({ atMm: 600, speed: 0 });
  });

  test('hands couple what touches, and the deck does not part a train', () => {
    const locos = { Plover: { road: 'C', atMm: 300 } };
    const scene = run(at({ deck: 'A', controller: 0.6, locos, stock: { wagon: 'C' } }), 6).scene;
    const coupled = act(quay, scene, { couple: { wagon: 'Plover' }, controller: -0.6 });
    const away = run(coupled, 1).scene;
    expect(away.stock.wagon?.atMm).toBeLessThan(560);
    near((away.stock.wagon?.atMm ?? 0) - of(away, 'Plover').atMm, 47.5 + 40, { abs: 1e-6 });
    expect((thrown(() => act(quay, away, { couple: { wagon: 'none' } })) as Error).message).toMatch(
      /moves/
    );
    const across: Scene = at({
      deck: 'C',
      pin: 'out',
      locos: { Plover: { road: 'Q', atMm: 2400 - 47.5 } },
      stock: { wagon: { ahead: 'Plover' } }
    });
    expect((thrown(() => act(quay, across, { deck: 0 })) as Error).message).toMatch(/edge/);
  });
});

describe('gapWords(yard, scene)', () => {
  const falls = (yard: Yard, input: SceneInput) =>
    driveTo(yard, start(sceneOf(yard, input)), 3).scene;

  test('a live road without a pin contact', () => {
    const scene = falls(quay, {
      deck: -140,
      controller: 0.6,
      locos: { Plover: { road: 'Q', atMm: 2300 } }
    });
    expect(gapWords(quay, scene)).toBe(
      'Plover fell into the gap: road Q was live and nothing faced it; its feed has no pin contact.'
    );
  });

  test('coasting', () => {
    const scene = falls(quay, {
      deck: -140,
      controller: 0,
      locos: { Plover: { road: 'Q', atMm: 2384.9, speed: 0.25 } }
    });
    expect(gapWords(quay, scene)).toBe(
      'Plover fell into the gap: it was coasting, and nothing faced road Q.'
    );
  });

  test('metal across the pin contact', () => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 4, runningRoad: 'interlocked' });
    const scene = falls(yard, {
      deck: -140,
      controller: 0.6,
      switches: { Q: true },
      locos: { Plover: { road: 'Q', atMm: 2300 } },
      edits: [{ metal: 'pin contact Q' }]
    });
    expect(gapWords(yard, scene)).toMatch(/went round the pin contact\.$/);
  });

  test('at most 20 words each; nothing while all stand on rails', () => {
    const scene = falls(quay, {
      deck: -140,
      controller: 0.6,
      locos: { Plover: { road: 'Q', atMm: 2300 } }
    });
    expect(gapWords(quay, scene).split(' ').length).toBeLessThanOrEqual(20);
    expect(gapWords(quay, sceneOf(quay, {}))).toBe('');
  });
});

describe('endStops', () => {
  test('stop a loco where nothing faces it, and let it by where something does', () => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 4, endStops: ['Q', 2] });
    const before = (deck: number | string) =>
      driveTo(
        yard,
        start(
          sceneOf(yard, {
            deck,
            controller: 0.6,
            switches: { R: true },
            locos: { Plover: { road: 'Q', atMm: 2300 } }
          })
        ),
        4
      );
    expect(before(-140).events).toMatchObject([{ kind: 'barrier', loco: 'Plover', road: 'Q' }]);
    expect(before(-140).events).toHaveLength(1);
    expect(before('R').events).toMatchObject([{ kind: 'joint', road: 'R' }]);
    expect(thrown(() => yardOf({ deckRoads: 2, endStops: ['A'] }))).toBeInstanceOf(Error);
  });
});
