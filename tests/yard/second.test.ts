import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driveTo, start } from '../../src/lib/motion';
import { liveRoads, read, roads, type YardInput } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, reading, sceneOf, thrown, yardOf, type SceneInput } from './build';
import { anyKnob } from './random';

/** Two controllers on one common return: A and B on the first, C and D on the second. */
const apart: YardInput = { deckRoads: 4, second: { roads: ['C', 'D'] } };
const shared: YardInput = { deckRoads: 4, second: { roads: ['C', 'D'], shares: 'supply' } };
const on = { A: true, B: true, C: true, D: true };
const held: SceneInput = { switches: on, locos: { Plover: 'A', Heron: 'C' } };

/** Where Plover and Heron have gone in a second. */
function gone(yard: YardInput, scene: SceneInput) {
  const at = moment(yard, { ...held, ...scene });
  const after = driveTo(at.yard, start(at.scene), 1).scene;
  return ['Plover', 'Heron'].map((name) =>
    Math.sign(Math.round((after.locos[name]?.atMm ?? NaN) - (at.scene.locos[name]?.atMm ?? NaN)))
  );
}

describe('a second controller with a supply of its own', () => {
  test('13: the common return carries the algebraic sum', () => {
    fc.assert(
      fc.property(anyKnob, anyKnob, (controller, second) => {
        const { amps } = reading(apart, { ...held, controller, second });
        const sum = amps('Plover') + amps('Heron');
        near(amps('return wire'), sum, { abs: 1e-9 });
        near(-amps('controller'), amps('Plover'), { abs: 1e-9 });
        near(-amps('controller 2'), amps('Heron'), { abs: 1e-9 });
        near(amps('loop link A-B'), amps('Heron'), { abs: 1e-9 });
      }),
      { numRuns: 50 }
    );
  });

  test('13: opposed, the same loco on each: their currents cancel in the wire home', () => {
    const { amps } = reading(apart, {
      switches: on,
      locos: { Plover: 'A', Heron: 'C' },
      edits: [{ resistor: 2, in: 'feed dropper C' }],
      controller: 0.5,
      second: -0.5
    });
    const [first, other] = [amps('Plover'), amps('Heron')];
    near(first, 6 / (20 + 0.5), { rel: 0.02 });
    near(other, -6 / (18 + 2 + 0.5), { rel: 0.02 });
    expect(Math.abs(amps('return wire'))).toBeLessThan(0.01);
  });

  test('13: opposed feeds differ by up to 24 V', () => {
    const volts = (controller: number, second: number) =>
      reading(apart, { controller, second }).between('feed', 'feed 2');
    near(volts(1, -1), 24, { rel: 1e-12 });
    near(volts(-1, 1), -24, { rel: 1e-12 });
    near(volts(1, 1), 0, { abs: 1e-12 });
    near(volts(0.5, -0.25), 9, { rel: 1e-12 });
  });

  test('each drives its own roads, either way, without a short', () => {
    expect(gone(apart, { controller: 0.6, second: -0.6 })).toEqual([1, -1]);
    expect(gone(apart, { controller: 0, second: 0.6 })).toEqual([0, 1]);
    expect(gone(apart, { controller: 0.6, second: 0 })).toEqual([1, 0]);
    const { limits, supplyShorted } = reading(apart, { ...held, controller: 1, second: -1 });
    expect([limits, supplyShorted]).toEqual([[], false]);
  });

  test('a short on its road takes its own limit only: the other goes on', () => {
    const scene = { ...held, controller: 0.6, second: 1, edits: [{ metal: 'rails of D' }] };
    const { limits, limiting, amps } = reading(apart, scene);
    expect([limits, limiting]).toEqual([['controller 2'], false]);
    near(amps('controller 2'), -1.5, { rel: 1e-9 });
    expect(gone(apart, scene)).toEqual([1, 0]);
  });

  test('levels: its feed is named, ink by the share of its own volts', () => {
    const { level } = reading(apart, { ...held, controller: 0.5, second: -1 });
    expect(level('feed rail A').joined).toBe('feed');
    expect(level('feed rail C').joined).toBe('feed 2');
    near(level('feed rail C').share, 1, { rel: 0.05 });
    expect(level('return rail C').joined).toBe('return');
    const broken = reading(apart, {
      ...held,
      controller: 0.5,
      second: -1,
      edits: [{ off: 'return dropper C' }]
    });
    expect(broken.level('return rail C')).toMatchObject({ joined: 'through', through: ['Heron'] });
    near(broken.level('return rail C').share, 1, { rel: 0.01 });
  });

  test('why: its roads are traced from its own feed', () => {
    const { why } = reading(apart, { switches: { C: true } });
    expect(why('C').state).toBe('loop');
    expect(why('C').feed.path[0]).toMatchObject({ id: 'feed 2 wire', from: 'feed 2' });
    expect(why('D').breaks).toEqual(['toggle D']);
    expect(why('A').breaks).toEqual(['toggle A']);
  });

  test('switches and live roads are as with one controller', () => {
    const bits = Array.from({ length: 16 }, (_, index) => index);
    for (const bit of bits) {
      const made = ['A', 'B', 'C', 'D'].filter((__, index) => (bit >> index) & 1);
      const switches = Object.fromEntries(made.map((road) => [road, true]));
      for (const input of [apart, shared]) {
        const { yard, scene } = moment(input, { switches });
        expect([...liveRoads(yard, scene)]).toEqual(made);
      }
    }
  });
});

describe('two controllers on one supply', () => {
  test('the same way both drive; knobs set the volts of each', () => {
    const { between, supplyShorted, limits } = reading(shared, { controller: 0.6, second: 0.25 });
    near(between('feed', 'return'), 7.2, { rel: 1e-9 });
    near(between('feed 2', 'return'), 3, { rel: 1e-9 });
    expect([supplyShorted, limits]).toEqual([false, []]);
    expect(gone(shared, { controller: -0.6, second: -0.6 })).toEqual([-1, -1]);
    expect(gone(shared, { controller: 0.6, second: 0 })).toEqual([1, 0]);
  });

  test.each([
    [0.6, -0.6],
    [-1, 0.1]
  ])('knobs %d and %d lay + and − on the return: a short, nobody moves', (controller, second) => {
    const found = reading(shared, { ...held, controller, second });
    expect(found.supplyShorted).toBe(true);
    expect([found.limiting, found.limits]).toEqual([true, ['supply']]);
    near(
      Math.abs(found.amps('controller 2 return on +') || found.amps('controller return on +')),
      1.5,
      {
        rel: 0.05
      }
    );
    expect(Math.abs(found.between('supply +', 'supply -') ?? NaN)).toBeLessThan(0.1);
    expect(gone(shared, { controller, second })).toEqual([0, 0]);
  });

  test('the short is there without any road or loco: it is in the controllers', () => {
    const { limits } = reading(shared, { controller: 0.5, second: -0.5 });
    expect(limits).toEqual(['supply']);
  });

  test('inks stand at centre', () => {
    const { level } = reading(shared, { switches: on });
    const joined = roads(yardOf(shared)).map((road) => level(`feed rail ${road}`));
    expect(joined.map((each) => each.joined)).toEqual(['feed', 'feed', 'feed 2', 'feed 2']);
    for (const { share } of joined) near(share, 1, { rel: 0.02 });
  });
});

test.each([[['Z']], [[]], [['A', 'A']], [['A', 'B', 'C', 'D']]])(
  'a second controller for %j is refused in words',
  (named) => {
    const error = thrown(() => yardOf({ deckRoads: 4, second: { roads: named } }));
    expect(String(error)).toContain('some of the roads of this yard, each named once');
  }
);

test('a second knob without a second controller is refused in words', () => {
  const yard = yardOf({ deckRoads: 2 });
  expect(String(thrown(() => sceneOf(yard, { second: 0.5 })))).toContain('no second controller');
  expect(read(yard, sceneOf(yard)).limits).toEqual([]);
});
