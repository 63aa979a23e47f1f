import { expect, test } from 'vitest';
import { driveTo, start } from '../../src/lib/motion';
import { moment } from '../yard/build';

const through = (on: readonly string[], deck = 'A') =>
  moment(
    { deckRoads: 2, stablingRoads: 1, runningEnds: 'both', runningRoad: 'interlocked' },
    {
      controller: 1,
      deck,
      switches: Object.fromEntries(on.map((road) => [road, true])),
      locos: { Plover: { road: 'Q', atMm: 2300 } }
    }
  );

test('a loco crosses from the west over an aligned deck road to the east', () => {
  const { yard, scene } = through(['Q', 'A', 'QQ']);
  const { events, scene: after } = driveTo(yard, start(scene), 8);
  expect(events.map(({ kind, road }) => `${kind} ${road}`)).toEqual(['joint A', 'joint QQ']);
  expect(after.locos.Plover).toMatchObject({ road: 'QQ', fallen: false });
  expect(after.locos.Plover?.speed).toBeGreaterThan(0.2);
});

test('with the east road off it stops there, just past the joint', () => {
  const { yard, scene } = through(['Q', 'A']);
  const { locos } = driveTo(yard, start(scene), 8).scene;
  expect(locos.Plover).toMatchObject({ road: 'QQ', speed: 0, fallen: false });
  // 15 mm of wheels cross first; what is left is its run-out.
  expect(locos.Plover?.atMm).toBeGreaterThan(15);
  expect(locos.Plover?.atMm).toBeLessThan(300);
});
