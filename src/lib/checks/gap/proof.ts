import type { Fault, Scene, Yard } from '../../yard';
import { clusters, unsafeCount, unsafeSettings } from './count';
import { casesOf, momentsOf, type Moment, type OpenCase } from './moments';
import { plainNetwork, type Network } from './network';
import type { Joint, OpenEnd } from './places';
import { restOf, switchesOf, wiringOf } from './wiring';

/** A state that drives a loco into the gap, as few switches on as will do. */
export interface Breach extends OpenEnd {
  readonly deckMm: number;
  readonly pin: 'home' | 'out';
  readonly plug: 'in' | 'out';
  /** Switches that are on. */
  readonly on: readonly string[];
  /** Joints across which a loco stands. */
  readonly across: readonly Joint[];
}

/** The states of a yard: settings of the switches × moments of deck and pin × plug. */
export interface States {
  readonly switches: readonly string[];
  readonly moments: number;
  readonly plugs: number;
  readonly all: bigint;
}

export interface GapProof {
  /** States in which some loco can be driven into the gap; exact. */
  readonly unsafe: bigint;
  /** Those of them in which the pin is home. */
  readonly unsafeHome: bigint;
  /** One state for each open end that can be live; one with the pin home where there is one. */
  readonly breaches: readonly Breach[];
}

const plugsOf = (yard: Yard): readonly ('in' | 'out')[] => (yard.plug ? ['in', 'out'] : ['in']);

/** The simplest state in which this end is live in this moment, if any. */
function breachOf(
  { network, rails, end, across }: OpenCase,
  moment: Moment,
  { plug, switches }: { readonly plug: 'in' | 'out'; readonly switches: readonly string[] }
): Breach | undefined {
  const [cluster] = clusters([{ network, rails }]);
  if (!cluster) return undefined;
  const [setting] = [...unsafeSettings(cluster)].sort((a, b) => bits(a) - bits(b));
  if (setting === undefined) return undefined;
  const on = cluster.switches.filter((_, bit) => (setting >> bit) & 1);
  return {
    ...end,
    deckMm: moment.place.deckMm,
    pin: moment.pin,
    plug,
    on: on.map((index) => switches[index] as string),
    across
  };
}

const bits = (setting: number): number => setting.toString(2).replaceAll('0', '').length;

const endKey = ({ road, end }: OpenEnd): string => `${road} ${end}`;

/** How far a breach is from everyday use: above all a pin that is out, then a plug out and wheels across a joint. */
const oddness = ({
  pin,
  plug,
  across,
  on
}: Pick<Breach, 'pin' | 'plug' | 'across' | 'on'>): number =>
  (plug === 'out' ? 100 : 0) + across.length * 30 + (pin === 'out' ? 1000 : 0) + on.length;

/** What stays the same whatever is broken. */
export interface Ground {
  readonly yard: Yard;
  readonly switches: readonly string[];
  readonly moments: readonly Moment[];
  readonly plugs: readonly ('in' | 'out')[];
  readonly rest: Scene;
}

/** The switches, moments and plug states of a yard. */
export function groundOf(yard: Yard): Ground {
  const moments = momentsOf(yard);
  const elsewhere = moments.find(
    ({ place, pin }) => pin === 'out' && place.joints.length === 0 && place.holes.length === 0
  );
  return {
    yard,
    switches: switchesOf(yard),
    moments,
    plugs: plugsOf(yard),
    rest: restOf(yard, elsewhere?.place.deckMm ?? 0)
  };
}

/** The states of a yard: 2^switches × moments of deck and pin × states of the plug. */
export const statesOf = ({ switches, moments, plugs }: Ground): States => ({
  switches,
  moments: moments.length,
  plugs: plugs.length,
  all: 2n ** BigInt(switches.length) * BigInt(moments.length * plugs.length)
});

/**
 * Proves that no loco can be driven into the gap, or finds the states in which one can.
 * Every state of switches, deck, pin and plug is covered: see content/gap-proof.md for the argument.
 * @throws TooManyError when one road depends on more switches than can be tried.
 */
export function proveGap(ground: Ground, faults: readonly Fault[] = []): GapProof {
  const { switches, plugs, moments } = ground;
  const found = new Map<string, Breach>();
  let unsafe = 0n;
  let unsafeHome = 0n;
  for (const plug of plugs) {
    const plain: Network = plainNetwork(wiringOf({ ...ground, plug, faults }));
    for (const moment of moments) {
      const cases = casesOf(plain, moment);
      const count = unsafeCount(cases, switches.length);
      if (count === 0n) continue;
      unsafe += count;
      if (moment.pin === 'home') unsafeHome += count;
      for (const each of cases) {
        const odd = oddness({ pin: moment.pin, plug, across: each.across, on: [] });
        const known = found.get(endKey(each.end));
        if (known && oddness(known) <= odd) continue;
        const breach = breachOf(each, moment, { plug, switches });
        if (breach && !(known && oddness(known) <= oddness(breach))) {
          found.set(endKey(each.end), breach);
        }
      }
    }
  }
  return { unsafe, unsafeHome, breaches: [...found.values()] };
}
