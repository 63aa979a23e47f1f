import {
  admit,
  beyond,
  fit,
  holes,
  locoNames,
  read,
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

/** Volts between the rails of a road. */
const railVolts = (yard: Yard, scene: Scene, road: string): number =>
  Math.abs(read(yard, scene).between(`feed rail ${road}`, `return rail ${road}`) ?? 0);

/** A scene in which another loco lets a current through to a road, and the road on which it stands. */
export interface Sneak {
  readonly scene: Scene;
  readonly by: string | undefined;
}

/**
 * The scene of a breach that may need a current through a loco elsewhere: where the road has no volts,
 * a loco is put on the other road that gives it most.
 */
export function sneakScene(yard: Yard, scene: Scene, road: string): Sneak {
  const name = locoNames.find((each) => !(each in scene.locos));
  const own = railVolts(yard, scene, road);
  if (own > 0.1 || name === undefined) return { scene, by: undefined };
  const taken = Object.values(scene.locos).map((at) => at.road);
  const tries = roadsOf(yard)
    .filter((other) => !taken.includes(other.name))
    .map(({ name: by, lengthMm }) => {
      const at = { road: by, atMm: lengthMm / 2, faces: 'east', speed: 0, fallen: false } as const;
      const tried = { ...scene, locos: { ...scene.locos, [name]: at } };
      return { scene: tried, by, volts: railVolts(yard, tried, road) };
    });
  const best = tries.reduce<(typeof tries)[number] | undefined>(
    (most, each) => (each.volts > (most?.volts ?? own) ? each : most),
    undefined
  );
  return best ?? { scene, by: undefined };
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
