import {
  admit,
  beyond,
  fit,
  holes,
  locoNames,
  roadNamed,
  roadsOf,
  SceneSchema,
  switchedRoads,
  type Fault,
  type Road,
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

/** The scene of a breach, ready to be played: a loco stands before the open end and the knob drives it there. */
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
    locos: { [first]: { ...standing, road, atMm }, ...Object.fromEntries(bridging) },
    faults: [...faults]
  });
  return fit('scene', yard, scene);
}

/** The hole at which most fixed roads face nothing while the pin is home, and those roads. */
function openHole(yard: Yard) {
  const fixed = roadsOf(yard).filter(({ bed, next }) => bed !== 'deck' && !next[towards(bed)]);
  return holes(yard)
    .map(({ deckMm }) => ({
      deckMm,
      open: fixed.filter(({ name, bed }) => beyond(yard, deckMm, name, towards(bed)).kind === 'gap')
    }))
    .reduce<{ readonly deckMm: number; readonly open: readonly Road[] } | undefined>(
      (most, each) => (most && most.open.length >= each.open.length ? most : each),
      undefined
    );
}

/** The end of a fixed road at which the deck slides past. */
const towards = (bed: Road['bed']): 'east' | 'west' => (bed === 'west' ? 'east' : 'west');

/**
 * What a proof says, ready to be played: the pin home, every switch on, a loco before each open end as
 * far as there are locos, and the knob driving the first of them there. Nothing moves into the gap.
 */
export function provedScene(yard: Yard): Scene {
  const hole = openHole(yard);
  const open = hole?.open ?? [];
  const end = open[0] ? towards(open[0].bed) : 'east';
  const locos = open.slice(0, locoNames.length).map((road, index) => {
    const atMm = towards(road.bed) === 'east' ? road.lengthMm - RUN_UP_MM : RUN_UP_MM;
    return [locoNames[index] as string, { road: road.name, atMm, faces: towards(road.bed) }];
  });
  const knob = end === 'east' ? 1 : -1;
  const on = switchedRoads(yard);
  const hands =
    yard.switching === 'rotary'
      ? { selector: on.find((road) => open.some(({ name }) => name === road)) ?? 'off' }
      : { switches: Object.fromEntries(on.map((road) => [road, true])) };
  return fit(
    'scene',
    yard,
    admit('scene', SceneSchema, {
      controller: knob,
      second: yard.second ? knob : 0,
      ...hands,
      deck: hole?.deckMm ?? 0,
      pin: hole ? 'home' : 'out',
      locos:
        locos.length > 0
          ? Object.fromEntries(locos)
          : { [locoNames[0] as string]: on[0] ?? roadsOf(yard)[0]?.name }
    })
  );
}
