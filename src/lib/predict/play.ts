import { driveTo, settle, start, type Drive } from '../motion';
import { act, read, type Action, type Scene, type Yard } from '../yard';
import type { Played } from './kinds/kind';

/** How long a scene is watched after something is done, s. */
export const WATCH_SECONDS = 3;

/** Plays an action: `scene` settles, hands do it, the yard is watched, and read at the end. */
export function play(yard: Yard, scene: Scene, action: Action | undefined): Played {
  const before = settle(yard, scene);
  const { scene: after } = watch(yard, before, action);
  return {
    yard,
    before,
    after,
    reading: read(yard, after),
    settled: settle(yard, action ? act(yard, before, action) : before),
    play: (other) => play(yard, scene, other)
  };
}

/** The drive of a settled scene from the moment something is done to the end of the watch. */
export const watch = (yard: Yard, before: Scene, action: Action | undefined): Drive =>
  driveTo(yard, start(action ? act(yard, before, action) : before), WATCH_SECONDS);
