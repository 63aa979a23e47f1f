import {
  admit,
  fit,
  roads,
  roadTitle,
  SceneSchema,
  switchedRoads,
  toggleRoads,
  type Scene,
  type Yard
} from '../yard';
import type { Check, Finding } from './finding';
import { isLiveWith, liveWith } from './gap/everyday';
import { networkOf, type Moment } from './gap/moments';
import { plainNetwork, type Network } from './gap/network';
import { groundOf, type Ground } from './gap/proof';
import { handsOf, sceneHands, settingsWithout, type Setting } from './gap/settings';
import { wiringOf } from './gap/wiring';
import { listed } from './listed';
import { hungriest, roadScene } from './road-scene';

/** A place of deck and pin, with the plug in or out, and its network. */
interface Placed {
  readonly moment: Moment;
  readonly plug: Scene['plug'];
  readonly network: Network;
}

/** Every moment, with the plug in and out. */
const placesOf = (ground: Ground): readonly Placed[] =>
  ground.plugs.flatMap((plug) => {
    const plain = plainNetwork(wiringOf({ ...ground, plug, faults: [] }));
    return ground.moments.map((moment) => ({
      moment,
      plug,
      network: networkOf(plain, moment, [])
    }));
  });

/** Roads that are live in some moment though their own switch is off or they have none: all others are on, which is the worst. */
const neverOff = (yard: Yard, { controls }: Ground, places: readonly Placed[]) =>
  roads(yard).filter((road) => {
    const others = settingsWithout(controls, road);
    return places.some(({ network }) =>
      others.some((setting) => isLiveWith(network, setting, road))
    );
  });

const titles = (yard: Yard, names: readonly string[]): string =>
  listed(names.map((road) => roadTitle(yard, road)));

const share = (yard: Yard, count: number): string => {
  const all = roads(yard).length;
  return all === 1 ? 'the only road' : `${count} of ${all} roads`;
};

const alwaysOn = (yard: Yard, names: readonly string[]): Finding => ({
  grade: 'think',
  what:
    yard.switching === 'none'
      ? 'No road has a switch: every road is live as soon as the knob is turned.'
      : `${titles(yard, names)} can be live with no switch of ${names.length === 1 ? 'its' : 'their'} own on.`,
  where: names,
  amount: share(yard, names.length),
  why: 'A loco left there starts as soon as the knob is turned, and nobody has touched a switch.',
  cure: `Put a switch in the feed of ${titles(yard, names)}.`,
  source: 'the engine',
  board: {
    yard,
    scene: roadScene({ yard, roads: names.slice(0, 1), locos: [hungriest(yard).name] })
  }
});

/** Every switch on but that of the first switched road, on which a loco stands. */
function offScene(yard: Yard): Scene {
  const [own, ...others] = switchedRoads(yard) as readonly [string, ...string[]];
  const { name } = hungriest(yard);
  const scene = roadScene({ yard, roads: [own], locos: [name] });
  const hands =
    yard.switching === 'rotary'
      ? { selector: others[0] ?? 'off' }
      : { switches: Object.fromEntries(others.map((road) => [road, true])) };
  return { ...scene, switches: {}, ...hands };
}

const off = (yard: Yard): Finding => ({
  grade: 'fine',
  what: 'Off is off: a road whose switch is off is dead, whatever else is on.',
  where: switchedRoads(yard),
  amount: share(yard, switchedRoads(yard).length),
  why: 'Tried with every other switch on, in every place of deck, pin and plug. One more closed contact never takes a path away, so no other setting is worse.',
  cure: 'Nothing to do.',
  source: 'the engine',
  board: { yard, scene: offScene(yard) }
});

/** The moment and setting in which most roads are live. */
function busiest({ controls }: Ground, places: readonly Placed[]) {
  const all = places.flatMap((place) =>
    settingsWithout(controls).map((setting) => ({
      place,
      setting,
      live: liveWith(place.network, setting)
    }))
  );
  return all.reduce((most, each) => (each.live.size > most.live.size ? each : most));
}

/** What the switches themselves see to, whoever works them. */
function guarantee({ switching, rotary }: Yard): string {
  switch (switching) {
    case 'none':
      return 'There are no switches: the knob drives every loco at once.';
    case 'toggles':
      return 'A toggle stays where it is put, so nothing keeps two from being on.';
    case 'pushes':
      return 'A push is dead as soon as it is let go, but two can be held together.';
    case 'rotary':
      return rotary === 'break before make'
        ? 'The selector lets go of one road before it takes the next: it never feeds two.'
        : 'The selector takes the next road before it lets go of the last: between two positions it feeds both.';
  }
}

function togetherCure(yard: Yard, unswitched: readonly string[]): string {
  if (yard.switching === 'rotary') {
    return unswitched.length > 0
      ? `Put a switch in the feed of ${titles(yard, unswitched)}, or take no loco there but the one that you drive.`
      : 'Take a selector that breaks before it makes.';
  }
  return yard.switching === 'none'
    ? 'Put a switch in the feed of each road.'
    : 'Switch one road on at a time. A rotary selector would see to it.';
}

/** How many roads can be live together. */
function together(yard: Yard, ground: Ground, places: readonly Placed[]): Finding {
  const { place, setting, live } = busiest(ground, places);
  const names = roads(yard).filter((road) => live.has(road));
  const many = names.length > 1;
  return {
    grade: many ? 'think' : 'fine',
    what: many
      ? `${names.length} roads can be live at once: ${titles(yard, names)}.`
      : 'No two roads can be live at once.',
    where: names,
    amount: share(yard, names.length),
    why: many ? `One knob drives the locos on all of them. ${guarantee(yard)}` : guarantee(yard),
    cure: many
      ? togetherCure(
          yard,
          names.filter((road) => !switchedRoads(yard).includes(road))
        )
      : 'Nothing to do.',
    source: 'the engine',
    board: { yard, scene: sceneAt(yard, ground, { place, setting }) }
  };
}

/** The scene of a moment with this setting, both knobs full east. */
function sceneAt(
  yard: Yard,
  { controls }: Ground,
  { place: { moment, plug }, setting }: { readonly place: Placed; readonly setting: Setting }
): Scene {
  const scene = admit('scene', SceneSchema, {
    controller: 1,
    second: yard.second ? 1 : 0,
    ...sceneHands(handsOf(controls, setting)),
    deck: moment.place.deckMm,
    pin: moment.pin,
    plug
  });
  return fit('scene', yard, scene);
}

/** What tells of a toggle that is left on, by the yard's lamps. */
const tellsOn = {
  own: {
    grade: 'fine',
    what: 'A toggle that is left on shows: its lamp burns.',
    cure: 'Look along the lamps before you turn the knob.'
  },
  track: {
    grade: 'think',
    what: 'A toggle that is left on shows only once the knob is turned east: its lamp is fed from the road.',
    cure: 'Look along the levers too, or give the lamps a supply of their own.'
  },
  none: {
    grade: 'think',
    what: 'A toggle that is left on keeps its road live, and nothing but its lever shows it.',
    cure: 'Fit a lamp beside each toggle, or keep to this order: on, drive, off.'
  }
} as const;

/** Roads that stay live once the hand is off, and what tells that they are. */
function leftOn(yard: Yard): readonly Finding[] {
  const names = toggleRoads(yard);
  if (names.length === 0) return [];
  return [
    {
      ...tellsOn[yard.lamps],
      where: names,
      amount: share(yard, names.length),
      why: 'A loco on a road that was forgotten moves together with the one that you drive.',
      source: 'common practice',
      board: { yard, scene: roadScene({ yard, roads: names.slice(0, 1) }) }
    }
  ];
}

/** Whether off is off, whether two roads can be live at once, and whether one sees it. */
export const offIsOff: Check = {
  id: 'off-is-off',
  title: 'Is off really off?',
  run(yard) {
    const ground = groundOf(yard);
    const places = placesOf(ground);
    const names = neverOff(yard, ground, places);
    const switched = switchedRoads(yard);
    return [
      ...(names.length > 0 ? [alwaysOn(yard, names)] : []),
      ...(switched.length === 0 || switched.some((road) => names.includes(road))
        ? []
        : [off(yard)]),
      together(yard, ground, places),
      ...leftOn(yard)
    ];
  }
};
