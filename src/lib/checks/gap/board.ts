import {
  admit,
  fit,
  locoNames,
  roadNamed,
  SceneSchema,
  type Fault,
  type Scene,
  type Yard
} from '../../yard';
import type { Breach } from './proof';
import { sceneHands } from './settings';

/** How far from the open end the loco of a breach stands, mm. */
const RUN_UP_MM = 120;

/** Where a loco stands whose wheels are half on one road and half on the other. */
const across = (yard: Yard, road: string) => {
  const { bed, lengthMm } = roadNamed(yard, road);
  return { road, atMm: bed === 'west' ? lengthMm : 0 };
};

/**
 * The scene of a breach, ready to be played: a loco stands before the open end and the knob drives it there.
 * The faults are some of the yard's own.
 */
export function breachScene(yard: Yard, breach: Breach, faults: readonly Fault[] = []): Scene {
  const { road, end } = breach;
  const { lengthMm } = roadNamed(yard, road);
  const [first, ...others] = locoNames as readonly [string, ...string[]];
  const atMm = end === 'east' ? Math.max(lengthMm - RUN_UP_MM, 0) : Math.min(RUN_UP_MM, lengthMm);
  const standing = { faces: end, speed: 0, fallen: false } as const;
  const bridging = breach.across.map(({ fixed }, index) => [
    others[index] as string,
    { ...standing, ...across(yard, fixed) }
  ]);
  const scene = admit('scene', SceneSchema, {
    controller: end === 'east' ? 1 : -1,
    second: yard.second ? (end === 'east' ? 1 : -1) : 0,
    ...sceneHands(breach.hands),
    deck: breach.deckMm,
    pin: breach.pin,
    plug: breach.plug,
    locos: { [first]: { ...standing, road, atMm }, ...Object.fromEntries(bridging) }
  });
  return { ...fit('scene', yard, scene), faults: [...faults] };
}
