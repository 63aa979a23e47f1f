import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driveTo, start, TICKS_PER_SECOND, type Drive } from '../../src/lib/motion';
import {
  beyond,
  locoNamed,
  motorConstant,
  roadNamed,
  type Scene,
  type Yard
} from '../../src/lib/yard';
import { moment, type Moment } from '../yard/build';
import { anyMoment, anyYard } from '../yard/random';

const runs = { numRuns: 10, seed: 5 };
/** Room for a slow machine; the tests take a few seconds each. */
const timeout = 60_000;
const SECONDS = 2;

/** Drives in frames of a screen to the same end. */
function inFrames({ yard, scene }: Moment, framesPerSecond: number): Drive {
  let drive = start(scene);
  for (let frame = 1; frame <= SECONDS * framesPerSecond; frame++) {
    drive = driveTo(yard, drive, frame / framesPerSecond);
  }
  return drive;
}

/** Every number of a drive, in order; Object.is tells apart what `===` does not. */
const numbers = ({ tick, scene, events }: Drive): readonly unknown[] => [
  tick,
  ...Object.entries(scene.locos).flatMap(([name, at]) => [name, ...Object.values(at)]),
  ...events.flatMap((event) => [event.kind, event.loco, event.end, event.road, event.tick])
];

function bitIdentical(one: Drive, other: Drive): void {
  const [first, second] = [numbers(one), numbers(other)];
  expect(second).toHaveLength(first.length);
  expect(first.filter((value, index) => !Object.is(value, second[index]))).toEqual([]);
}

const property = (check: (at: Moment) => void): void => {
  fc.assert(fc.property(anyMoment(anyYard), check), runs);
};

describe('driveTo(scene), any yard', { timeout }, () => {
  test('at 30, 60 and 144 frames a second, and in one go, it ends bit-identical', () => {
    property((at) => {
      const whole = driveTo(at.yard, start(at.scene), SECONDS);
      for (const framesPerSecond of [30, 60, 144]) {
        bitIdentical(whole, inFrames(at, framesPerSecond));
      }
    });
  });

  test('driven to the same time again, it stands still; and twice gives the same', () => {
    property((at) => {
      const once = driveTo(at.yard, start(at.scene), 1);
      expect(driveTo(at.yard, once, 1)).toBe(once);
      expect(driveTo(at.yard, once, 0.5)).toBe(once);
      bitIdentical(once, driveTo(at.yard, start(at.scene), 1));
      expect(once.tick).toBe(TICKS_PER_SECOND);
    });
  });

  test('takes whole ticks only, and is never ahead of the time', () => {
    const { yard, scene } = moment({ deckRoads: 1 });
    const ticksAt = (seconds: number) => driveTo(yard, start(scene), seconds).tick;
    expect([0, 0.5, 0.99, 1, 1.99, 2].map((ticks) => ticksAt(ticks / TICKS_PER_SECOND))).toEqual([
      0, 0, 0, 1, 1, 2
    ]);
    const whole = Array.from({ length: 600 }, (_, tick) => tick);
    expect(whole.map((tick) => ticksAt(tick / TICKS_PER_SECOND))).toEqual(whole);
  });

  test('the scene it was given stays as it was', () => {
    property((at) => {
      const before = JSON.stringify(at.scene);
      driveTo(at.yard, start(at.scene), 0.5);
      expect(JSON.stringify(at.scene)).toBe(before);
    });
  });
});

/** Every tick of a drive. */
function* ticks(yard: Yard, scene: Scene, seconds: number): Generator<Scene> {
  let drive = start(scene);
  for (let tick = 1; tick <= seconds * TICKS_PER_SECOND; tick++) {
    drive = driveTo(yard, drive, tick / TICKS_PER_SECOND);
    yield drive.scene;
  }
}

describe('driveTo(scene), any yard, at every tick', { timeout }, () => {
  test('each loco keeps its middle on its road, and the whole of itself where an end is closed', () => {
    property(({ yard, scene }) => {
      for (const { locos, deck } of ticks(yard, scene, 2.5)) {
        for (const [name, { atMm, road }] of Object.entries(locos)) {
          const clear = (end: 'west' | 'east') =>
            ['barrier', 'backstop'].includes(beyond(yard, deck, road, end).kind)
              ? locoNamed(name).lengthMm / 2
              : 0;
          expect(atMm).toBeGreaterThanOrEqual(clear('west'));
          expect(atMm).toBeLessThanOrEqual(roadNamed(yard, road).lengthMm - clear('east'));
        }
      }
    });
  });

  test('no energy from nothing: a loco is never faster than U/k, nor goes against the knob', () => {
    property(({ yard, scene }) => {
      const volts = yard.supply.volts * scene.controller;
      for (const { locos } of ticks(yard, scene, 1)) {
        for (const [name, { speed }] of Object.entries(locos)) {
          const most = Math.abs(volts) / motorConstant(locoNamed(name));
          expect(Math.abs(speed)).toBeLessThanOrEqual(most);
          expect(speed * volts).toBeGreaterThanOrEqual(0);
        }
      }
    });
  });
});
