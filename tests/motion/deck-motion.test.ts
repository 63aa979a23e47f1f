import { describe, expect, test } from 'vitest';
import { TICKS_PER_SECOND } from '../../src/lib/motion';
import { contacts } from '../../src/lib/tables';
import { liveRoads, locoNamed, motorConstant, read, type Scene } from '../../src/lib/yard';
import { near } from '../circuit/near';
import type { SceneInput } from '../yard/build';
import { at, of, quay, run, ticks } from './quay';

const lengths: Record<string, number> = { Q: 2400, R: 1200, C: 1200, 2: 300 };
/** West ends along the line, mm east of the deck's: running road, deck, stabling road. */
const begins: Record<string, number> = { Q: -2400, R: 0, C: 0, 2: 1200 };

type Crossing = [from: string, to: string, deck: string, way: 'east' | 'west'];
const crossings: Crossing[] = [
  ['Q', 'C', 'C', 'east'],
  ['C', 'Q', 'C', 'west'],
  ['Q', 'R', 'R', 'east'],
  ['R', 'Q', 'R', 'west'],
  ['R', '2', '2', 'east'],
  ['2', 'R', '2', 'west']
];

/** A loco that stands 100 mm before the end of its road, knob at 7.2 V towards it. */
const before = (name: string, [from, , deck, way]: Crossing, more: SceneInput = {}): Scene => {
  const atMm = way === 'east' ? (lengths[from] ?? NaN) - 100 : 100;
  const controller = way === 'east' ? 0.6 : -0.6;
  return at({ deck, controller, locos: { [name]: { road: from, atMm } }, ...more });
};
const place = (scene: Scene, name: string): number => {
  const { road, atMm } = of(scene, name);
  return (begins[road] ?? NaN) + atMm;
};

describe('driveTo(scene): an aligned joint', () => {
  test.each(crossings)('Plover goes over from %s to %s, deck at %s, once', (...crossing) => {
    const [from, to, , way] = crossing;
    const drive = run(before('Plover', crossing), 2);
    expect(drive.events).toMatchObject([{ kind: 'joint', loco: 'Plover', end: way, road: to }]);
    expect(of(before('Plover', crossing), 'Plover').road).toBe(from);
    expect(of(drive.scene, 'Plover')).toMatchObject({ road: to, fallen: false });
  });

  test.each(crossings)(
    'from %s to %s the place is continuous, half the sum of speeds',
    (...crossing) => {
      const drives = ticks(before('Plover', crossing), 2);
      expect(drives).toHaveLength(2 * TICKS_PER_SECOND + 1);
      for (const [index, { scene }] of drives.slice(1).entries()) {
        const last = drives[index]?.scene as Scene;
        const mean = (of(last, 'Plover').speed + of(scene, 'Plover').speed) / 2;
        const gone = place(scene, 'Plover') - place(last, 'Plover');
        near(gone, (1000 * mean) / TICKS_PER_SECOND, { abs: 1e-9 });
      }
    }
  );

  // Two wheels on rails, 0.1 Ω each, come into the loop while the loco stands on both roads; two
  // ways in parallel take a little less in wire. Friction takes the light current at any speed.
  test.each(crossings)(
    'from %s to %s its speed differs by what wheels and wire take',
    (...crossing) => {
      const drives = ticks(before('Plover', crossing), 2).slice(60);
      const speeds = drives.map(({ scene }) => Math.abs(of(scene, 'Plover').speed));
      const { lightAmps } = locoNamed('Plover');
      const wheels =
        (lightAmps * 2 * contacts['wheel on rail'].ohms) / motorConstant(locoNamed('Plover'));
      const [slow, fast] = [Math.min(...speeds), Math.max(...speeds)];
      expect(slow).toBeGreaterThan(0.09);
      expect(fast - slow).toBeLessThanOrEqual(1.2 * wheels);
      expect(wheels / slow).toBeLessThan(0.012);
    }
  );
});

describe('driveTo(scene): wheels across a joint', () => {
  const dead: Crossing = ['Q', 'C', 'C', 'east'];
  const moments = ticks(before('Plover', dead, { switches: {} }), 1.6).map(({ scene }) => scene);
  const bridges = (scene: Scene): boolean => Math.abs(place(scene, 'Plover')) < 15;

  test('feed a dead road through them, for as long as they stand on both', () => {
    const states = moments.map((scene) => [bridges(scene), liveRoads(quay, scene).has('C')]);
    expect(new Set(states.map(String))).toEqual(new Set(['false,false', 'true,true']));
  });

  test('the reading shows it: level, loop, and the wheels that it goes through', () => {
    const scene = moments.find(bridges) as Scene;
    const { level, why, between } = read(quay, scene);
    expect([level('feed rail C').joined, level('return rail C').joined]).toEqual([
      'feed',
      'return'
    ]);
    expect(between('feed rail C', 'return rail C')).toBeGreaterThan(6.5);
    const { state, feed } = why('C');
    expect(state).toBe('loop');
    expect(feed.path.map(({ id }) => id)).toEqual([
      'feed wire',
      'feed dropper Q',
      "Plover's feed wheels on Q",
      "Plover's feed wheels on C"
    ]);
    const apart = read(quay, moments[0] as Scene);
    expect(apart.why('C').breaks).toEqual(['toggle C']);
    expect(apart.level('feed rail C').joined).toBe('nothing');
  });

  test('join the return rails too: a road whose return is lost has one by way of them', () => {
    const edits = [{ off: 'return dropper C' }];
    const [apart, across] = [2300, 2395].map((atMm) => {
      const locos = { Plover: { road: 'Q', atMm } };
      return read(quay, at({ deck: 'C', controller: 0.6, locos, edits }));
    });
    expect(apart?.level('return rail C').joined).toBe('nothing');
    expect(across?.level('return rail C').joined).toBe('return');
    expect(across?.why('C').return.path.map(({ id }) => id)).toContain(
      "Plover's return wheels on C"
    );
  });

  test('another loco that waits on the dead road is fed through them and starts', () => {
    const waiting = before('Avocet', dead, {
      switches: {},
      controller: 1,
      locos: { Avocet: { road: 'Q', atMm: 2300 }, Plover: { road: 'C', atMm: 600 } }
    });
    const drives = ticks(waiting, 2);
    const moved = drives.filter(({ scene }) => of(scene, 'Plover').speed > 0);
    expect(moved.length).toBeGreaterThan(10);
    for (const { scene } of moved.slice(0, 5)) {
      expect(Math.abs(place(scene, 'Avocet'))).toBeLessThan(75 + 5);
    }
    expect(of(drives.at(-1)?.scene as Scene, 'Plover').speed).toBe(0);
  });
});
