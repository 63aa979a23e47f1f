import { describe, expect, test } from 'vitest';
import { driveTo, settle, start, TICKS_PER_SECOND, type Drive } from '../../src/lib/motion';
import { locoNamed, locoNames, motorConstant, read, startingVolts } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { moment, type SceneInput } from '../yard/build';

/** A supply and wires that take next to nothing: what the knob gives, the loco gets. */
const ideal = {
  deckRoads: 1,
  switching: 'none',
  roadLengthMm: 3000,
  supply: { ohms: 0, limitAmps: 10 },
  wires: { main: { lengthM: 0.01 }, link: { lengthM: 0.01 }, dropper: { lengthM: 0.01 } }
};

const alone = (name: string, controller: SceneInput['controller'], yard: object = ideal) =>
  moment(yard, { locos: { [name]: 'A' }, controller });

/** The one loco of a drive. */
const of = ({ scene }: Drive, name: string) => scene.locos[name] ?? expect.fail(`no ${name}`);

describe('driveTo(scene): a loco that runs light', () => {
  // The demo scenario's table, "runs light at 12 V": amps and speed then.
  test.each([
    ['Plover', 0.18, 0.25],
    ['Heron', 0.25, 0.3],
    ['Curlew', 0.14, 0.35],
    ['Dunlin', 0.12, 0.18],
    ['Avocet', 0.35, 0.4]
  ])('%s on 12 V takes %d A at %d m/s', (name, amps, speed) => {
    const { yard, scene } = alone(name, 1);
    const driven = driveTo(yard, start(scene), 2);
    near(of(driven, name).speed, speed, { rel: 2e-3 });
    near(read(yard, driven.scene).amps(name), amps, { rel: 2e-3 });
  });

  const knobs = [0.5, 0.75, 1, -0.6, -1];
  test.each(locoNames.flatMap((name) => knobs.map((knob) => ({ name, knob }))))(
    '$name at knob $knob settles at v = (U − I₀·R)/k, U from the reading',
    ({ name, knob }) => {
      const { yard, scene } = alone(name, knob, { deckRoads: 1, switching: 'none' });
      const driven = driveTo(yard, start(scene), 0.8);
      const reading = read(yard, driven.scene);
      const volts = reading.between('feed rail A', 'return rail A') ?? NaN;
      const loco = locoNamed(name);
      const expected = (Math.abs(volts) - startingVolts(loco)) / motorConstant(loco);
      near(of(driven, name).speed, Math.sign(knob) * expected, { rel: 1e-6 });
      near(Math.abs(reading.amps(name)), loco.lightAmps, { rel: 1e-6 });
    }
  );

  test('settle(scene): the same speed, with each loco still where it stood', () => {
    const { yard, scene } = alone('Heron', 0.8);
    const settled = settle(yard, scene);
    near(settled.locos['Heron']?.speed, of(driveTo(yard, start(scene), 1), 'Heron').speed, {
      rel: 1e-6
    });
    expect(settled.locos['Heron']?.atMm).toBe(scene.locos['Heron']?.atMm);
  });

  test('a dearer resistor makes it slower, in feed or return alike', () => {
    const speed = (edits: SceneInput['edits']) => {
      const { yard, scene } = moment(
        { deckRoads: 1, switching: 'none' },
        { locos: { Plover: 'A' }, controller: 0.8, edits }
      );
      return of(driveTo(yard, start(scene), 1), 'Plover').speed;
    };
    const feed = speed([{ resistor: 10, in: 'feed dropper A' }]);
    near(speed([{ resistor: 10, in: 'return dropper A' }]), feed, { rel: 1e-9 });
    expect(feed).toBeLessThan(0.9 * speed([]));
    expect(feed).toBeGreaterThan(0);
  });
});

describe('driveTo(scene): starting and stopping', () => {
  test.each(locoNames)('%s stays just below its starting volts and starts just above', (name) => {
    const knob = startingVolts(locoNamed(name)) / 12;
    for (const [share, moves] of [
      [0.98, false],
      [1.02, true]
    ] as const) {
      const { yard, scene } = alone(name, knob * share);
      const { atMm, speed } = of(driveTo(yard, start(scene), 3), name);
      expect(speed > 0).toBe(moves);
      expect(atMm > 1500).toBe(moves);
    }
  });

  test('held at rest it draws U/R, and more than when it runs', () => {
    const { yard, scene } = alone('Avocet', 1);
    const held = read(yard, scene);
    const volts = held.between('feed rail A', 'return rail A') ?? NaN;
    near(held.amps('Avocet'), volts / 14, { rel: 1e-9 });
    const running = read(yard, settle(yard, scene));
    expect(held.amps('Avocet')).toBeGreaterThan(2 * running.amps('Avocet'));
  });

  test('the feed opened, friction stops a running loco, and it stays', () => {
    const { yard, scene } = alone('Heron', 1);
    const running = driveTo(yard, start(scene), 1);
    const opened = { ...running.scene, edits: [{ off: 'feed dropper A' }] };
    const stopped = driveTo(yard, start(opened), 1);
    expect(of(stopped, 'Heron').speed).toBe(0);
    // Friction alone: s = v²·m / (2·k·I₀).
    const { mass, lightAmps } = locoNamed('Heron');
    const k = motorConstant(locoNamed('Heron'));
    const metres = (of(running, 'Heron').speed ** 2 * mass) / (2 * k * lightAmps);
    near(of(stopped, 'Heron').atMm - of(running, 'Heron').atMm, 1000 * metres, { rel: 0.1 });
    expect(of(driveTo(yard, stopped, 5), 'Heron')).toEqual(of(stopped, 'Heron'));
  });

  test('the knob reversed, it stops and runs as fast the other way', () => {
    const { yard, scene } = alone('Plover', 1);
    const east = driveTo(yard, start(scene), 1);
    const west = driveTo(yard, start({ ...east.scene, controller: -1 }), 1);
    near(of(west, 'Plover').speed, -of(east, 'Plover').speed, { rel: 1e-6 });
    expect(of(west, 'Plover').atMm).toBeLessThan(of(east, 'Plover').atMm);
  });
});

describe('driveTo(scene): the barrier of a deck that is wired for good', () => {
  const short = { deckRoads: 2, switching: 'none', roadLengthMm: 600 };

  test.each([
    ['east', 1, 600 - 95 / 2],
    ['west', -1, 95 / 2]
  ] as const)('a loco that meets it %s is held there, and told once', (end, controller, atMm) => {
    const { yard, scene } = alone('Plover', controller, short);
    const driven = driveTo(yard, start(scene), 5);
    expect(of(driven, 'Plover')).toMatchObject({ speed: 0, atMm });
    expect(driven.events).toHaveLength(1);
    expect(driven.events[0]).toMatchObject({ kind: 'barrier', loco: 'Plover', end, road: 'A' });
    const seconds = (driven.events[0]?.tick ?? NaN) / TICKS_PER_SECOND;
    near(seconds, (600 / 2 - 95 / 2) / 1000 / 0.245, { rel: 0.05 });
  });

  test('held there, it draws U/R; driven on, nothing more happens', () => {
    const { yard, scene } = alone('Plover', 1, short);
    const held = driveTo(yard, start(scene), 5);
    const reading = read(yard, held.scene);
    const volts = reading.between('feed rail A', 'return rail A') ?? NaN;
    near(reading.amps('Plover'), volts / 20, { rel: 1e-9 });
    expect(driveTo(yard, held, 9)).toEqual({ ...held, tick: 9 * TICKS_PER_SECOND });
  });

  test('it can drive away again', () => {
    const { yard, scene } = alone('Plover', 1, short);
    const held = driveTo(yard, start(scene), 5).scene;
    const away = driveTo(yard, start({ ...held, controller: -1 }), 1);
    expect(of(away, 'Plover').speed).toBeLessThan(-0.2);
    expect(away.events).toEqual([]);
  });
});
