import { describe, expect, test } from 'vitest';
import { driveTo, start } from '../../src/lib/motion';
import { locoNames, read, type Scene, type Yard } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, type SceneInput } from '../yard/build';

/**
 * NEM 631:1985 cl. 2.3: the rail on the right in the direction of travel is positive.
 * NMRA S-9: positive on the right-hand rail moves the locomotive forward.
 * NEM 631:1985 cl. 2.2: turning a locomotive end for end does not change its direction of travel.
 *
 * Here west is left and east is right, the feed rail is the south one: on the right of a loco
 * that goes east. These checks hold for each loco and each way of standing.
 */
const stands = locoNames.flatMap((name) =>
  (['east', 'west'] as const).map((faces) => ({ name, faces }))
);

const onRoadA = (name: string, faces: 'east' | 'west', more: SceneInput): [Yard, Scene] => {
  const locos = { [name]: { road: 'A', faces } };
  const { yard, scene } = moment({ deckRoads: 1 }, { switches: { A: true }, locos, ...more });
  return [yard, scene];
};

/** How far a loco goes in a second, mm; east is positive. */
function gone([yard, scene]: [Yard, Scene], name: string): number {
  const after = driveTo(yard, start(scene), 1).scene;
  return (after.locos[name]?.atMm ?? NaN) - (scene.locos[name]?.atMm ?? NaN);
}

/** Volts of the south rail against the north one. */
const southAgainstNorth = ([yard, scene]: [Yard, Scene]): number =>
  read(yard, scene).between('feed rail A', 'return rail A') ?? NaN;

describe('NEM 631 cl. 2.3, NMRA S-9: the right-hand rail is positive', () => {
  test.each(stands)('$name facing $faces: south rail positive, it goes east', ({ name, faces }) => {
    const at = onRoadA(name, faces, { controller: '70% east' });
    expect(southAgainstNorth(at)).toBeGreaterThan(0);
    expect(gone(at, name)).toBeGreaterThan(10);
  });

  test.each(stands)('$name facing $faces: north rail positive, it goes west', ({ name, faces }) => {
    const at = onRoadA(name, faces, { controller: '70% west' });
    expect(southAgainstNorth(at)).toBeLessThan(0);
    expect(gone(at, name)).toBeLessThan(-10);
  });

  test('the droppers swapped reverse a loco as the knob does', () => {
    const swapped: SceneInput['edits'] = [
      { move: 'feed dropper A', to: 'return' },
      { move: 'return dropper A', to: 'feed' }
    ];
    const east = onRoadA('Plover', 'east', { controller: '70% east' });
    const west = onRoadA('Plover', 'east', { controller: '70% west' });
    const turned = onRoadA('Plover', 'east', { controller: '70% east', edits: swapped });
    near(gone(turned, 'Plover'), gone(west, 'Plover'), { rel: 1e-9 });
    near(gone(east, 'Plover'), -gone(west, 'Plover'), { rel: 1e-9 });
  });
});

describe('NEM 631 cl. 2.2: which way round a loco stands', () => {
  test.each(locoNames)('turning %s end for end changes nothing of how it goes', (name) => {
    for (const controller of ['70% east', '70% west'] as const) {
      const [one, other] = (['east', 'west'] as const).map((faces) =>
        gone(onRoadA(name, faces, { controller }), name)
      );
      expect(Math.abs(one ?? NaN)).toBeGreaterThan(10);
      expect(other).toBe(one);
    }
  });
});
