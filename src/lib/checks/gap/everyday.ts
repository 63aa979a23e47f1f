import { isLiveAt } from './count';
import { settingsFor, type Setting } from './settings';
import type { Network } from './network';
import type { HurtYard } from './hurt';
import type { Sound } from './sound';
import type { View } from './view';
import type { Rails } from './wiring';

/** Whether some source can drive a current through a road with this setting. */
export function isLiveWith(network: Network, setting: Setting, road: string): boolean {
  const { rails, sources } = network.wiring;
  const own = rails.get(road) as Rails;
  return isLiveAt(
    sources.map((source) => ({ network, rails: own, source })),
    setting
  );
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

/** A moment of everyday use: the pin home in a hole, the plug in, the two roads that face each other switched on. */
export interface Day {
  readonly kind: number;
  readonly setting: Setting;
  /** Roads that are live in a sound yard. */
  readonly live: ReadonlySet<string>;
}

const isLive = (view: View, road: string, { kind, setting }: Pick<Day, 'kind' | 'setting'>) =>
  isLiveAt(view.cases(road, kind, []), setting);

/** Everyday use of a sound yard. */
export function daysOf({ ground, plugs: [plug] }: Sound): readonly Day[] {
  const view = plug?.view as View;
  const { atlas, controls, moments } = ground;
  return moments.flatMap(({ pin, place }, index) => {
    if (pin !== 'home') return [];
    const kind = atlas.kindOf[index] as number;
    const roads = place.joints.flatMap(({ fixed, deckRoad }) => [fixed, deckRoad]);
    return settingsFor(controls, roads).map((setting) => {
      const all = [...view.wiring.rails.keys()];
      const live = all.filter((road) => isLive(view, road, { kind, setting }));
      return { kind, setting, live: new Set(live) };
    });
  });
}

/** Compares everyday use with faults and without. */
export function noticeOf({ plugs: [plug] }: HurtYard, days: readonly Day[]): Notice {
  const dead = new Set<string>();
  const live = new Set<string>();
  const differing = plug?.pinned;
  for (const road of differing?.roads ?? []) {
    for (const day of days) {
      if (!plug || !differing?.has(road, day.kind)) continue;
      const now = isLive(plug.view, road, day);
      if (now !== day.live.has(road)) (now ? live : dead).add(road);
    }
  }
  const names = (roads: ReadonlySet<string>) =>
    [...(plug?.view.wiring.rails.keys() ?? [])].filter((road) => roads.has(road));
  return { dead: names(dead), live: names(live) };
}
