import { describe, expect, test } from 'vitest';
import { driveTo, start } from '../../src/lib/motion';
import {
  fleetOf,
  locoIn,
  locosOf,
  motorConstant,
  startingVolts,
  type YardInput
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { sceneOf, yardOf } from './build';

const withLocos = (locos: YardInput['locos']) => yardOf({ deckRoads: 2, locos });

describe('locos of one’s own', () => {
  test('what is left out is as with the demo loco of the shape', () => {
    const yard = withLocos({ Knot: { shape: 'tank', lengthMm: 80 } });
    expect(locoIn(yard, 'Knot')).toEqual({ ...locoIn(yard, 'Plover'), name: 'Knot', lengthMm: 80 });
    expect(locosOf(yard).map(({ name }) => name)).toContain('Knot');
    expect(fleetOf(yard).map(({ name }) => name)).toEqual(['Knot']);
    expect(fleetOf(withLocos({}))).toHaveLength(5);
  });

  // Steady state of a permanent-magnet motor: U = I₀·R + k·v.
  test('one runs as its own figures say', () => {
    const figures = {
      shape: 'tank',
      ohms: 10,
      lightAmps: 0.1,
      lightSpeed: 0.5,
      mass: 0.1
    } as const;
    const yard = withLocos({ Knot: figures });
    const loco = locoIn(yard, 'Knot');
    const scene = sceneOf(yard, {
      locos: { Knot: { road: 'A', atMm: 200 } },
      switches: { A: true },
      controller: 0.5
    });
    const after = driveTo(yard, start(scene), 1).scene;
    const behind = 0.1 * (yard.supply.ohms + loco.ohms);
    near(startingVolts(loco), 1, { rel: 1e-12 });
    near(after.locos.Knot?.speed ?? 0, (6 - behind) / motorConstant(loco), { rel: 0.01 });
  });

  test.each<[string, YardInput['locos'], RegExp]>([
    ['a demo loco’s name', { Heron: { shape: 'tank' } }, /no demo loco/],
    ['a name in small letters', { coach: { shape: 'tank' } }, /begins with a capital/],
    ['pick-ups beyond the buffers', { Knot: { shape: 'tank', pickupSpanMm: 200 } }, /no longer/],
    ['a motor that 12 V do not start', { Knot: { shape: 'tank', ohms: 200 } }, /12 V to start/]
  ])('%s is refused', (_, locos, why) => {
    expect(() => withLocos(locos)).toThrow(why);
  });
});
