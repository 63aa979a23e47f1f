import type { Fault } from '../../yard';
import { closesLoop } from './loop';
import { madeBy } from './count';
import { networkOf } from './moments';
import { settingsFor, type Setting } from './settings';
import { plainNetwork, type Network } from './network';
import type { Ground } from './proof';
import { wiringOf, type Rails } from './wiring';

/** Everyday use: the pin home in each hole, the plug in, the two roads that face each other switched on. */
function everyday({ controls, moments }: Ground, plain: Network): readonly ReadonlySet<string>[] {
  const pinned = moments.filter(({ pin }) => pin === 'home');
  return pinned.flatMap((moment) => {
    const roads = moment.place.joints.flatMap(({ fixed, deckRoad }) => [fixed, deckRoad]);
    const network = networkOf(plain, moment, []);
    return settingsFor(controls, roads).map((setting) => liveWith(network, setting));
  });
}

/** Whether some source can drive a current through a road with this setting. */
export function isLiveWith(network: Network, setting: Setting, road: string): boolean {
  const { rails, sources } = network.wiring;
  const made = madeBy(network.wiring, setting);
  const own = rails.get(road) as Rails;
  return sources.some((source) => closesLoop({ network, rails: own, source }, made));
}

/** Names of the roads through which some source can drive a current with this setting. */
export const liveWith = (network: Network, setting: Setting): ReadonlySet<string> =>
  new Set([...network.wiring.rails.keys()].filter((road) => isLiveWith(network, setting, road)));

/** What somebody who works the yard as usual sees of a fault. */
export interface Notice {
  /** Roads which stay dead though they should be live. */
  readonly dead: readonly string[];
  /** Roads which are live though nobody switched them on. */
  readonly live: readonly string[];
}

/** Roads that are live in each moment of everyday use with these faults. */
export const daysOf = (ground: Ground, faults: readonly Fault[]): Days =>
  everyday(ground, plainNetwork(wiringOf({ ...ground, plug: 'in', faults })));

type Days = readonly ReadonlySet<string>[];

/** Compares everyday use with these faults and without. */
export function noticeOf(ground: Ground, faults: readonly Fault[], good: Days): Notice {
  const bad = daysOf(ground, faults);
  const more = (a: Days, b: Days) => [
    ...new Set(a.flatMap((live, index) => [...live].filter((road) => !b[index]?.has(road))))
  ];
  return { dead: more(good, bad), live: more(bad, good) };
}
