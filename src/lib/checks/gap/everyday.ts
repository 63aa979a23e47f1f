import type { Fault } from '../../yard';
import { closesLoop } from './loop';
import { networkOf, type Moment } from './moments';
import { plainNetwork, type Network } from './network';
import type { Ground } from './proof';
import { wiringOf } from './wiring';

/** Everyday use: the pin home in each hole, the plug in, the two roads that face each other switched on. */
function everyday(ground: Ground, plain: Network): readonly ReadonlySet<string>[] {
  const pinned = ground.moments.filter(({ pin }) => pin === 'home');
  return pinned.map((moment) => liveAt(ground, plain, moment));
}

function liveAt({ switches }: Ground, plain: Network, moment: Moment): ReadonlySet<string> {
  const on = new Set(moment.place.joints.flatMap(({ fixed, deckRoad }) => [fixed, deckRoad]));
  return liveWith(switches, networkOf(plain, moment, []), on);
}

/** Names of the roads through which current can flow with these switches on. */
export function liveWith(
  switches: readonly string[],
  network: Network,
  on: ReadonlySet<string>
): ReadonlySet<string> {
  const { switched, rails } = network.wiring;
  const made = (contact: number) => {
    const { by, made: position } = switched[contact] as { by: number; made: number };
    return (on.has(switches[by] as string) ? 1 : 0) === position;
  };
  const live = [...rails.values()].filter((road) => closesLoop(network, road, made));
  return new Set(live.map(({ name }) => name));
}

/** What somebody who works the yard as usual sees of a fault. */
export interface Notice {
  /** Roads which stay dead though they should be live. */
  readonly dead: readonly string[];
  /** Roads which are live though nobody switched them on. */
  readonly live: readonly string[];
}

/** Compares everyday use with these faults and without. */
export function noticeOf(ground: Ground, faults: readonly Fault[]): Notice {
  const days = (some: readonly Fault[]) =>
    everyday(ground, plainNetwork(wiringOf({ ...ground, plug: 'in', faults: some })));
  const good = days([]);
  const bad = days(faults);
  const more = (a: readonly ReadonlySet<string>[], b: readonly ReadonlySet<string>[]) => [
    ...new Set(a.flatMap((live, index) => [...live].filter((road) => !b[index]?.has(road))))
  ];
  return { dead: more(good, bad), live: more(bad, good) };
}
