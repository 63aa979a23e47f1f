import { expect } from 'vitest';
import { driveTo, start, TICKS_PER_SECOND, type Drive } from '../../src/lib/motion';
import type { Scene, Standing } from '../../src/lib/yard';
import { sceneOf, yardOf, type SceneInput } from '../yard/build';

/** Quillby Quay as built. */
export const quay = yardOf({ deckRoads: 5, stablingRoads: 4 });

/** A scene of Quillby Quay with all toggles on, unless it says otherwise. */
export const at = (input: SceneInput): Scene =>
  sceneOf(quay, {
    switches: Object.fromEntries([...'ABCDER1234'].map((road) => [road, true])),
    ...input
  });

/** Drives a scene from its start. */
export const run = (scene: Scene, seconds: number): Drive => driveTo(quay, start(scene), seconds);

/** Every tick of a drive, the start too. */
export function ticks(scene: Scene, seconds: number): readonly Drive[] {
  const drives = [start(scene)];
  for (let tick = 1; tick <= seconds * TICKS_PER_SECOND; tick++) {
    drives.push(driveTo(quay, drives.at(-1) as Drive, tick / TICKS_PER_SECOND));
  }
  return drives;
}

/** Where a loco stands; fails the test where there is none. */
export const of = (scene: Scene, name: string): Standing =>
  scene.locos[name] ?? expect.fail(`no ${name}`);
