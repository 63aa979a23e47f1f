import { describe, expect, test } from 'vitest';
import { driveTo, settle, start } from '../../src/lib/motion';
import {
  act,
  holes,
  liveRoads,
  locoNamed,
  motorConstant,
  read,
  RefusedError,
  roads,
  startingVolts,
  type Edit
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { sceneOf, thrown, yardOf, type SceneInput } from './build';

/**
 * Truths of two-rail DC wiring which any such yard shows, on Quillby Quay: twelve of the fifteen.
 * The three which it has no parts for, and the lamps of the sixth, stand in plain-truths.test.ts.
 * Not modelled: the differential of a micro-switch (the pin is home or out), and wagons.
 * Source: Kirchhoff's laws and common practice of wiring such yards.
 */
const quay = yardOf({ deckRoads: 5, stablingRoads: 4 });
const on = (...names: string[]) => Object.fromEntries(names.map((name) => [name, true]));
const all = on('A', 'B', 'C', 'D', 'E', 'R', '1', '2', '3', '4');

/** Plover on C, all on, deck pinned at C, 7.2 V east. */
const base: SceneInput = { locos: { Plover: 'C' }, switches: all, deck: 'C', controller: 0.6 };
const at = (more: SceneInput = {}) => sceneOf(quay, { ...base, ...more });
const reads = (more: SceneInput = {}) => read(quay, at(more));
const live = (more: SceneInput = {}) => [...liveRoads(quay, at(more))].join('');

/** How far Plover goes in a second, mm, east positive. */
const gone = (more: SceneInput = {}): number => {
  const scene = at(more);
  const after = driveTo(quay, start(scene), 1).scene;
  return (after.locos['Plover']?.atMm ?? NaN) - (scene.locos['Plover']?.atMm ?? NaN);
};
const turned: Edit[] = [
  { move: 'feed dropper C', to: 'return' },
  { move: 'return dropper C', to: 'feed' }
];

describe('circuit truths, on Quillby Quay', () => {
  test('1: nothing moves without a complete loop and volts: any part of the loop out stops it', () => {
    expect(gone()).toBeGreaterThan(90);
    const { feed, return: home } = reads().why('C');
    const loop = [...feed.path, ...home.path].map(({ id }) => id);
    const alone = loop.filter((id) => !id.startsWith('plug return'));
    expect([loop.length, alone.length]).toEqual([13, 12]);
    for (const off of alone) expect([off, gone({ edits: [{ off }] })]).toEqual([off, 0]);
    const both = ['plug return 1', 'plug return 2'].map((off) => ({ off }));
    expect(gone({ edits: both.slice(1) })).toBeGreaterThan(90);
    expect(gone({ edits: both })).toBe(0);
    const without: SceneInput[] = [{ switches: {} }, { plug: 'out' }, { controller: 'centre' }];
    for (const more of without) expect(gone(more)).toBe(0);
  });

  test('2: polarity decides the way, not the nose; a road turned end for end goes the other way', () => {
    const west = { locos: { Plover: { road: 'C', faces: 'west' as const } } };
    expect(gone(west)).toBe(gone());
    near(gone({ edits: turned }), -gone(), { rel: 1e-9 });
  });

  test.each(['Plover', 'Avocet'])(
    '3: %s runs on over the gap until its last pick-up has crossed, and no further',
    (name) => {
      const scene = at({ locos: { [name]: { road: 'Q', atMm: 2200 } }, switches: {} });
      const { road, atMm, speed } = driveTo(quay, start(scene), 8).scene.locos[name] ?? {
        atMm: NaN
      };
      const { pickupSpanMm, mass, lightAmps } = locoNamed(name);
      const k = motorConstant(locoNamed(name));
      const v = (7.2 - startingVolts(locoNamed(name))) / k;
      const coastMm = (1000 * (v * v * mass)) / (2 * k * lightAmps);
      expect({ road, speed }).toEqual({ road: 'C', speed: 0 });
      expect(atMm).toBeGreaterThan(pickupSpanMm / 2);
      expect(atMm).toBeLessThan(pickupSpanMm / 2 + coastMm + (1000 * v) / 60);
    }
  );

  test('4: OFF opens the feed; the loco’s other rail still meets the common return', () => {
    const { level, between } = reads({ switches: {} });
    expect(level('return rail C').joined).toBe('return');
    expect(level('feed rail C')).toMatchObject({ joined: 'through', through: ['Plover'] });
    near(between('feed tag C', 'feed C 1'), 7.2, { rel: 1e-9 });
  });

  test('5: toggles on share the volts and sum the amps; the limit acts on the sum', () => {
    const locos = { Plover: 'A', Heron: 'B', Curlew: 'C' };
    const held = (controller: number, ...names: string[]) =>
      reads({ locos, controller, switches: on(...names) });
    const three = held(0.6, 'A', 'B', 'C');
    const sum = Object.keys(locos).reduce((total, name) => total + three.amps(name), 0);
    near(-three.amps('controller'), sum, { rel: 1e-9 });
    const volts = ['A', 'B', 'C'].map((r) => three.between(`feed rail ${r}`, `return rail ${r}`));
    for (const each of volts) near(each, three.between('feed', 'return') ?? NaN, { rel: 0.03 });
    expect(['A', 'B', 'C'].map((road) => held(1, road).limiting)).toEqual([false, false, false]);
    expect(held(1, 'A', 'B', 'C').limiting).toBe(true);
  });

  test('6: a short on a live road drops every road of that controller; on a dead road none', () => {
    const edits: Edit[] = [{ metal: 'rails of B' }];
    const locos = { Plover: 'C', Heron: 'Q', Curlew: '2' };
    const [live, dead] = [on('B', 'C'), on('C')].map((switches) =>
      reads({ locos, switches, edits, deck: '2', controller: 1 })
    );
    expect([live?.limiting, dead?.limiting]).toEqual([true, false]);
    for (const rails of ['C', 'Q']) {
      const ends = [`feed rail ${rails}`, `return rail ${rails}`] as const;
      expect(Math.abs(live?.between(...ends) ?? NaN)).toBeLessThan(1);
      expect(dead?.between(...ends)).toBeGreaterThan(11);
    }
  });

  test.each<[shape: 'chain' | 'ring', one: string, two: string]>([
    ['chain', 'QAB1234', 'QAB1234'],
    ['ring', 'QABCDER1234', 'QABER1234']
  ])('7: a %s, one link out: live %s; two links out: %s', (shape, ...lives) => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 4, interlocked: false, return: shape });
    const found = [['B-C'], ['B-C', 'D-E']].map((links) => {
      const edits = links.map((link) => ({ off: `loop link ${link}` }));
      return [...liveRoads(yard, sceneOf(yard, { switches: all, edits }))].join('');
    });
    expect(found).toEqual(lives);
  });

  test('8: the interlock breaks the feed, made only with the pin home; metal across it defeats it', () => {
    const out = { deck: '2', pin: 'out' as const, locos: { Plover: '2' } };
    expect(reads(out).why('2').breaks).toEqual(['pin contact 2']);
    expect(reads({ ...out, pin: 'home' }).why('2').state).toBe('loop');
    expect(live({ ...out, edits: [{ metal: 'pin contact 2' }] })).toContain('2');
    expect(thrown(() => act(quay, at({ deck: -221 }), { pin: 'home' }))).toBeInstanceOf(
      RefusedError
    );
  });

  test.each<['direct' | 'interlocked', boolean, string]>([
    ['direct', true, 'QABCDER'],
    ['interlocked', true, 'ABCDER'],
    ['direct', false, 'QABCDER1234']
  ])(
    '9: coverage is a list: running road %s, stabling interlocked %j: live out of line: %s',
    (runningRoad, interlocked, list) => {
      const yard = yardOf({ deckRoads: 5, stablingRoads: 4, runningRoad, interlocked });
      const switches = runningRoad === 'direct' ? all : { ...all, Q: true };
      expect([...liveRoads(yard, sceneOf(yard, { deck: -140, switches }))].join('')).toBe(list);
    }
  );

  test('11: volts fall along wire and contacts with the current; the speed follows', () => {
    const speeds = [0.5, 5, 50].map((lengthM) => {
      const yard = yardOf({ deckRoads: 1, wires: { main: { size: '7/0.2', lengthM } } });
      const running = settle(
        yard,
        sceneOf(yard, { ...base, locos: { Plover: 'A' }, deck: 0, switches: on('A') })
      );
      const { amps, between } = read(yard, running);
      const path =
        (between('feed', 'feed rail A') ?? 0) + (between('return rail A', 'return') ?? 0);
      const rails = between('feed rail A', 'return rail A') ?? NaN;
      near(rails + path, 7.2 - 0.5 * amps('Plover'), { rel: 1e-9 });
      const speed = running.locos['Plover']?.speed ?? NaN;
      near(speed, (rails - 3.6) / 33.6, { rel: 1e-6 });
      return speed;
    });
    expect(speeds).toEqual([...speeds].sort((a, b) => b - a));
    expect(speeds[2]).toBeLessThan(0.8 * (speeds[0] ?? NaN));
  });

  test('12: a dead road stops no part without pick-ups: Heron’s front is past the joint, it still runs', () => {
    const nose = { Heron: { road: 'Q', atMm: 2400 - 60 / 2 - 1 } };
    const { lengthMm } = locoNamed('Heron');
    expect(nose.Heron.atMm + lengthMm / 2).toBeGreaterThan(2400 + 70);
    expect(reads({ locos: nose, switches: {} }).amps('Heron')).toBeGreaterThan(0.25);
    const past = { Heron: { road: 'C', atMm: 60 / 2 + 1 } };
    expect(reads({ locos: past, switches: {} }).amps('Heron')).toBe(0);
  });

  test('15: a sliding deck keeps polarity at every stop; a road turned half round shorts at the joint', () => {
    const limits = holes(quay).map(({ name, fixed, deckRoad }) => {
      const end = fixed === 'Q' ? 0 : quay.roadLengthMm;
      const locos = { Plover: { road: deckRoad, atMm: end } };
      const scene = { deck: name, locos, controller: 1 };
      const { limiting, between } = reads(scene);
      const volts = [fixed, deckRoad].map(
        (r) => between(`feed rail ${r}`, `return rail ${r}`) ?? 0
      );
      for (const each of volts) expect(each).toBeGreaterThan(11);
      return limiting;
    });
    expect(limits).toEqual(Array<boolean>(10).fill(false));
    const across = { locos: { Plover: { road: 'C', atMm: 0 } }, controller: 1, edits: turned };
    expect(reads(across).limiting).toBe(true);
    expect(roads(quay)).toHaveLength(11);
  });
});
