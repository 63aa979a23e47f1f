import type { Fault, Scene, Yard } from '../../yard';
import { clusters, settingsCount, sizeOf } from './count';
import { atlasOf, endKey, type Atlas } from './atlas';
import { caseKey, type Case } from './loop';
import { valueAt } from './value-at';
import { handsIn, livesOf, type Lives } from './live';
import { casesOf, choicesOf, momentsOf, type Moment } from './moments';
import { plainNetwork, type Network } from './network';
import type { Joint, OpenEnd } from './places';
import { controlsOf, handWork, type Control, type Hands } from './settings';
import { restOf, wiringOf } from './wiring';

/** A state that drives a loco into the gap, as few controls off their rest as will do. */
export interface Breach extends OpenEnd {
  readonly deckMm: number;
  readonly pin: 'home' | 'out';
  readonly plug: 'in' | 'out';
  /** Controls that do not rest, with their stands. */
  readonly hands: Hands;
  /** Joints across which a loco stands. */
  readonly across: readonly Joint[];
}

/** The states of a yard: settings of the controls × moments of deck and pin × plug. */
export interface States {
  readonly controls: readonly Control[];
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

/** The least that hands have to do to make one of a road's cases live; worked out once where they share a network. */
export function handsFor(cases: readonly Case[], controls: readonly Control[]): Hands | undefined {
  const [{ network, rails }] = cases as readonly [Case, ...Case[]];
  const find = () => {
    const { fewest } = livesOf(cases, controls);
    return fewest && handsIn(fewest, controls);
  };
  return cases.every((each) => each.network === network)
    ? valueAt(network.known.hands, rails.name, find)
    : find();
}

/** The plainest breach of each end, by the end's name. */
type Found = Map<string, Breach>;

/** Notes each end that is live in this moment, unless a plainer state is known for it. */
function noteBreaches(
  found: Found,
  plain: Network,
  moment: Moment,
  { plug, controls }: { readonly plug: 'in' | 'out'; readonly controls: readonly Control[] }
): void {
  for (const across of choicesOf(moment)) {
    const odd = oddness({ pin: moment.pin, plug, across, hands: {} });
    const cases = casesOf(plain, moment, across);
    for (const end of moment.place.open) {
      const known = found.get(endKey(end));
      if (known && oddness(known) <= odd) continue;
      const own = cases.filter((each) => each.end === end);
      const hands = handsFor(own, controls);
      if (!hands) continue;
      const { deckMm } = moment.place;
      const breach = { ...end, deckMm, pin: moment.pin, plug, hands, across };
      if (!known || oddness(breach) < oddness(known)) found.set(endKey(end), breach);
    }
  }
}

/** How far a breach is from everyday use: above all a pin that is out, then a plug out and wheels across a joint. */
export const oddness = ({
  pin,
  plug,
  across,
  hands
}: Pick<Breach, 'pin' | 'plug' | 'across' | 'hands'>): number =>
  (plug === 'out' ? 100 : 0) + across.length * 30 + (pin === 'out' ? 1000 : 0) + handWork(hands);

/** What stays the same whatever is broken. */
export interface Ground {
  readonly yard: Yard;
  readonly controls: readonly Control[];
  readonly moments: readonly Moment[];
  readonly atlas: Atlas;
  readonly plugs: readonly ('in' | 'out')[];
  readonly rest: Scene;
}

/** The controls, moments and plug states of a yard. */
export function groundOf(yard: Yard): Ground {
  const moments = momentsOf(yard);
  const elsewhere = moments.find(
    ({ place, pin }) => pin === 'out' && place.joints.length === 0 && place.holes.length === 0
  );
  return {
    yard,
    controls: controlsOf(yard),
    moments,
    atlas: atlasOf(moments),
    plugs: plugsOf(yard),
    rest: restOf(yard, elsewhere?.place.deckMm ?? 0)
  };
}

/** How many settings of the controls make one of these cases live, worked out once for a single case. */
function unsafeCount(cases: readonly Case[], all: readonly Control[]): bigint {
  const found = clusters(cases).map((own) => lives(own, all));
  const used = new Set(found.flatMap(({ controls }) => controls));
  const free = settingsCount(all.filter((_, index) => !used.has(index)));
  const safe = found.reduce(
    (product, { controls, count }) => product * (sizeOf(controls, all) - count),
    free
  );
  return settingsCount(all) - safe;
}

function lives(cases: readonly Case[], all: readonly Control[]): Lives {
  const [only, ...others] = cases as readonly [Case, ...Case[]];
  const find = () => livesOf(cases, all);
  return others.length === 0 ? valueAt(only.network.known.lives, caseKey(only), find) : find();
}

/** The states of a yard: settings of its controls × moments of deck and pin × states of the plug. */
export const statesOf = ({ controls, moments, plugs }: Ground): States => ({
  controls,
  moments: moments.length,
  plugs: plugs.length,
  all: settingsCount(controls) * BigInt(moments.length * plugs.length)
});

/**
 * Proves that no loco can be driven into the gap, or finds the states in which one can.
 * Every state of controls, deck, pin and plug is covered: see content/gap-proof.md for the argument.
 * @throws TooManyError when one road can be live in too many ways to try.
 */
export function proveGap(ground: Ground, faults: readonly Fault[] = []): GapProof {
  const { controls, plugs, moments } = ground;
  const found: Found = new Map();
  let unsafe = 0n;
  let unsafeHome = 0n;
  for (const plug of plugs) {
    const plain: Network = plainNetwork(wiringOf({ ...ground, plug, faults }));
    for (const moment of moments) {
      const count = unsafeCount(casesOf(plain, moment), controls);
      if (count === 0n) continue;
      unsafe += count;
      if (moment.pin === 'home') unsafeHome += count;
      noteBreaches(found, plain, moment, { plug, controls });
    }
  }
  return { unsafe, unsafeHome, breaches: [...found.values()] };
}
