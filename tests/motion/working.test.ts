import { expect, test } from 'vitest';
import { driveTo, isOver, start } from '../../src/lib/motion';
import { act, toggleRoads, type Action, type Scene, type Yard } from '../../src/lib/yard';
import { sceneOf, yardOf } from '../yard/build';
import { of, quay } from './quay';

interface Told {
  readonly scene: Scene;
  readonly events: readonly string[];
}

/** Hands do it, with only these toggles on; then the yard runs until it is done or a loco has fallen. */
function until(
  yard: Yard,
  { scene }: Pick<Told, 'scene'>,
  { on, ...action }: Action & { on: string },
  done: (scene: Scene) => boolean
): Told {
  const toggles = toggleRoads(yard);
  const thrown = Object.fromEntries(toggles.map((road) => [road, on.includes(road)]));
  let drive = start(act(yard, scene, { ...action, switch: thrown }));
  for (let tenths = 1; !done(drive.scene) && !isOver(drive.scene); tenths++) {
    expect(tenths, `not done after 40 s: ${JSON.stringify(drive.scene.locos)}`).toBeLessThan(400);
    drive = driveTo(yard, drive, tenths / 10);
  }
  return {
    scene: act(yard, drive.scene, { controller: 0 }),
    events: drive.events.map(({ kind, loco, road }) => `${kind} ${loco} ${road}`)
  };
}

const stands = (scene: Scene, name: string, road: string, [from, to]: [number, number]): boolean =>
  of(scene, name).road === road && of(scene, name).atMm >= from && of(scene, name).atMm <= to;

/** The demo scenario's working, start to end, without the wagons. */
function working(yard: Yard): readonly Told[] {
  const locos = { Heron: { road: 'Q', atMm: 1800 }, Plover: '2' };
  const begin = { scene: sceneOf(yard, { deck: 'C', locos }) };
  const into = until(yard, begin, { on: 'QC', controller: 1 }, (s) =>
    stands(s, 'Heron', 'C', [1094.9, 1200])
  );
  const out = until(yard, into, { on: 'R2', deck: '2', pin: 'home', controller: -0.6 }, (s) =>
    stands(s, 'Plover', 'R', [0, 600])
  );
  const run = until(yard, out, { on: 'QR', deck: 'R', pin: 'home', controller: -0.6 }, (s) =>
    stands(s, 'Plover', 'Q', [0, 2200])
  );
  const back = until(yard, run, { on: 'QC', deck: 'C', pin: 'home', controller: 0.6 }, (s) =>
    stands(s, 'Plover', 'C', [200, 1000])
  );
  const away = until(yard, back, { on: 'QC', controller: -0.6 }, (s) =>
    stands(s, 'Heron', 'Q', [0, 2000])
  );
  const onto = until(yard, away, { on: 'QR', deck: 'R', pin: 'home', controller: 0.6 }, (s) =>
    stands(s, 'Heron', 'R', [300, 1000])
  );
  const home = until(yard, onto, { on: 'R2', deck: '2', pin: 'home', controller: 0.6 }, (s) =>
    stands(s, 'Heron', '2', [120, 300])
  );
  return [into, out, run, back, away, onto, home];
}

const untilHome = [
  ['joint Heron C', 'barrier Heron C'],
  ['joint Plover R'],
  ['joint Plover Q'],
  ['joint Plover C'],
  ['joint Plover Q', 'joint Heron Q'],
  ['joint Heron R']
];

test('a working on Quillby Quay, improved: in on C, Plover takes the train away, Heron to road 2', () => {
  const told = working(yardOf({ deckRoads: 5, stablingRoads: 4, runningRoad: 'interlocked' }));
  expect(told.map(({ events }) => events)).toEqual([...untilHome, ['joint Heron 2']]);
  const end = told.at(-1)?.scene as Scene;
  expect(end).toMatchObject({ deck: -220, pin: 'home' });
  expect(of(end, 'Heron').road).toBe('2');
  expect(of(end, 'Plover')).toMatchObject({ road: 'Q', fallen: false });
});

test('the same on Quillby Quay as built: Plover, left on the Quay line, falls while Heron goes home', () => {
  const told = working(quay);
  expect(told.slice(0, 6).map(({ events }) => events)).toEqual(untilHome);
  expect(told.at(-1)?.events).toContain('gap Plover Q');
});
