import { describe, expect, test } from 'vitest';
import {
  act,
  apply,
  findPoint,
  placed,
  PlaceError,
  pointName,
  points,
  probedRoads,
  RefusedError,
  type Edit,
  type Run,
  type YardInput
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, reading, sceneOf, thrown, yardOf, type SceneInput } from './build';

const quay: YardInput = { deckRoads: 2, stablingRoads: 1 };

const runsOf = (yard: YardInput, scene: SceneInput = {}): readonly Run[] => {
  const made = moment(yard, scene);
  return apply(made.yard, made.scene);
};

describe('points(runs)', () => {
  test('names every place of a small yard where a probe can be held', () => {
    expect(points(runsOf({ deckRoads: 1 })).map(({ id, name }) => [id, name])).toEqual([
      ['feed', "the controller's feed"],
      ['return', "the controller's return"],
      ['feed tag A', 'feed tag A'],
      ['toggle A panel side', 'toggle A, panel side'],
      ['toggle A rail side', 'toggle A, rail side'],
      ['feed rail A', 'feed rail A'],
      ['return rail A', 'return rail A'],
      ['return tag A', 'return tag A']
    ]);
  });

  test('a moving deck has both sides of plug and pin contact', () => {
    const ids = points(runsOf(quay)).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['plug A fixed side', 'plug A deck side']));
    expect(ids).toEqual(
      expect.arrayContaining(['pin contact 1 panel side', 'pin contact 1 rail side'])
    );
    expect(ids).toEqual(
      expect.arrayContaining(['plug return 2 fixed side', 'plug return 2 deck side', 'deck joint'])
    );
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('every point lies on a node of the wiring, on the side that its name says', () => {
    const runs = runsOf(quay);
    const nodes = new Set(runs.flatMap(placed).flatMap(({ from, to }) => [from, to]));
    for (const { node } of points(runs)) expect(nodes).toContain(node);
    const { from, to } = runs.flatMap(placed).find(({ id }) => id === 'plug return 1') ?? {};
    expect(findPoint(runs, 'plug return 1 deck side').node).toBe(from);
    expect(findPoint(runs, 'plug return 1 fixed side').node).toBe(to);
  });

  test('a toggle moved into the return keeps its sides: that of the rail stays with the rail', () => {
    const moved = { edits: [{ toggle: 'A', in: 'return dropper A' }] } satisfies SceneInput;
    const runs = runsOf({ deckRoads: 1 }, moved);
    expect(findPoint(runs, 'toggle A panel side').node).toBe('return tag A');
  });

  test('findPoint: a point that is not there is refused with those that are', () => {
    const error = thrown(() => findPoint(runsOf({ deckRoads: 1 }), 'feed rail Z'));
    expect(error).toBeInstanceOf(PlaceError);
    expect((error as Error).message).toMatch(/^No 'feed rail Z' in this yard\. There are: feed, /);
  });

  test('pointName: tells an id as a modeller would', () => {
    expect(pointName('plug B deck side')).toBe('plug B, deck side');
    expect(pointName('feed')).toBe("the controller's feed");
  });

  test('probedRoads: the roads that the two probes touch', () => {
    const runs = runsOf({ deckRoads: 3 }, { edits: [{ volts: ['feed rail B', 'return tag C'] }] });
    const meter = runs.find(({ id }) => id === 'meter volts') as Run;
    expect(probedRoads(runs, meter)).toEqual(['B', 'C']);
  });
});

const held = (edits: readonly Edit[], extra: SceneInput = {}) =>
  reading({ deckRoads: 2 }, { controller: 1, ...extra, edits: [...edits] });

describe('the voltmeter', () => {
  test('reads the supply at the controller, and the minus sign the other way round', () => {
    near(held([{ volts: ['feed', 'return'] }]).volts('meter volts'), 12, { rel: 1e-6 });
    near(held([{ volts: ['return', 'feed'] }]).volts('meter volts'), -12, { rel: 1e-6 });
  });

  test('on a floating rail it reads 0.00 V, from either side, and the rail stays joined to nothing', () => {
    for (const terminal of ['feed', 'return']) {
      const met = held([{ volts: [terminal, 'feed rail B'] }]);
      near(met.volts('meter volts'), 0, { abs: 5e-3 });
      expect(met.level('feed rail B').joined).toBe('nothing');
    }
  });

  test('loads a 1 kΩ divider by less than one part in a thousand, as 10 MΩ does', () => {
    const edits: readonly Edit[] = [
      { resistor: 1000, in: 'feed dropper A' },
      { volts: ['feed rail A', 'return rail A'] }
    ];
    const met = held(edits, { locos: { Plover: 'A' }, switches: { A: true } });
    near(met.volts('meter volts'), (12 * 20) / 1020, { rel: 5e-3 });
  });

  test('is no way round: a road with it alone across its open toggle stays open', () => {
    const met = held([{ volts: ['toggle A panel side', 'toggle A rail side'] }], {
      locos: { Plover: 'A' }
    });
    expect(met.why('A')).toMatchObject({ state: 'open', breaks: ['toggle A'] });
    near(met.volts('meter volts'), 12, { rel: 1e-4 });
  });

  test('is held after every other change is made, whatever the order of the list', () => {
    const probe: Edit = { volts: ['toggle A rail side', 'return rail A'] };
    const joint: Edit = { resistor: 200, in: 'feed dropper A' };
    const at: SceneInput = { locos: { Plover: 'A' }, switches: { A: true } };
    const [first, last] = [
      held([probe, joint], at).volts('meter volts'),
      held([joint, probe], at).volts('meter volts')
    ];
    expect(first).toBe(last);
  });
});

describe('the test lamp', () => {
  test.each<[number, string]>([
    [1, 'bright'],
    [0.75, 'bright'],
    [0.6, 'dim'],
    [0.2, 'dim'],
    [0.1, 'dark'],
    [0, 'dark']
  ])('across the terminals at knob %d it is %s', (controller, lit) => {
    expect(held([{ testLamp: ['feed', 'return'] }], { controller }).testLamp).toBe(lit);
  });

  test('is a load: beyond it a rail stands at its level through the lamp only', () => {
    const lit = held([{ testLamp: ['feed', 'feed rail B'] }]);
    expect(lit.level('feed rail B')).toMatchObject({ joined: 'through', through: ['test lamp'] });
    expect(lit.testLamp).toBe('dark');
  });

  test('there is none where none is held', () => {
    expect(held([]).testLamp).toBeUndefined();
    expect(held([]).ohms).toBeUndefined();
  });
});

describe('the ohmmeter', () => {
  const off: SceneInput = { supply: 'off' };

  test('buzzes along a whole wire, and is open over an open toggle', () => {
    const along = (switches: Record<string, boolean>) =>
      held([{ ohms: ['feed', 'feed rail A'] }], { ...off, switches }).ohms;
    expect(along({ A: true })).toBeLessThan(0.5);
    expect(along({ A: false })).toBe(Infinity);
  });

  test('round a closed loop it reads the loco: an armature of 20 Ω reads through', () => {
    const round = held([{ ohms: ['feed', 'return'] }], {
      ...off,
      locos: { Plover: 'A' },
      switches: { A: true }
    });
    near(round.ohms, 20.2, { abs: 0.2 });
  });

  test('reads a 470 Ω joint, and tells the supply nothing: no loco gets enough to start', () => {
    const met = held(
      [{ resistor: 470, in: 'feed dropper A' }, { ohms: ['feed tag A', 'feed rail A'] }],
      { ...off, switches: { A: true }, locos: { Plover: 'A' } }
    );
    near(met.ohms, 470, { rel: 1e-3 });
    expect(Math.abs(met.amps('Plover'))).toBeLessThan(0.002);
  });

  test('with the supply on it is refused, in a scene and by hand', () => {
    const yard = yardOf({ deckRoads: 1 });
    const edits: Edit[] = [{ ohms: ['feed', 'return'] }];
    expect(() => sceneOf(yard, { edits })).toThrow(
      'met an ohmmeter with the supply on, allowed: ohms with supply: off'
    );
    expect(thrown(() => act(yard, sceneOf(yard), { edits }))).toMatchObject({
      code: 'refused',
      why: 'The supply is on: switch it off before you measure ohms.'
    });
    const measured = act(yard, sceneOf(yard), { supply: 'off', edits });
    expect(measured.supply).toBe('off');
    expect(thrown(() => act(yard, measured, { supply: 'on' }))).toBeInstanceOf(RefusedError);
    expect(act(yard, measured, { supply: 'on', edits: [] }).supply).toBe('on');
  });
});

describe('supply: off', () => {
  test('nothing flows, no terminal is joined to the other, and the inks stand', () => {
    const dead = held([{ volts: ['feed', 'return'] }], {
      supply: 'off',
      locos: { Plover: 'A' },
      switches: { A: true }
    });
    near(dead.amps('Plover'), 0, { abs: 0 });
    near(dead.amps('controller'), 0, { abs: 0 });
    near(dead.volts('meter volts'), 0, { abs: 1e-12 });
    expect(dead.level('feed rail A').joined).toBe('feed');
    expect(dead.why('A').state).toBe('loop');
    expect(dead.limiting).toBe(false);
  });

  test('an open loop is open at its toggle, not at the supply', () => {
    expect(held([], { supply: 'off' }).why('B').breaks).toEqual(['toggle B']);
  });
});
