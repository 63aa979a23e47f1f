import { roadsOf, type Yard } from '../../yard';
import { deckPlaces, pinnedPlaces, type DeckPlace, type Joint, type OpenEnd } from './places';
import { acrossPairs, momentNetwork, type Network } from './network';
import { coneOf, type Case } from './loop';
import type { Pinned, Rails, Wiring } from './wiring';

/** A deck place with the pin home or out. */
export interface Moment {
  readonly place: DeckPlace;
  readonly pin: 'home' | 'out';
}

/** Every place with the pin out, and every hole with the pin home, without the ends at which a stop holds a loco. */
export function momentsOf(yard: Yard): readonly Moment[] {
  const held = new Set(
    roadsOf(yard).flatMap(({ name, whole }) => (yard.endStops.includes(whole) ? [name] : []))
  );
  const at = (pin: Moment['pin']) => (place: DeckPlace) => ({
    place: { ...place, open: place.open.filter(({ road }) => !held.has(road)) },
    pin
  });
  return [...pinnedPlaces(yard).map(at('home')), ...deckPlaces(yard).map(at('out'))];
}

/** A case with the end it is about. */
export interface OpenCase extends Case {
  readonly end: OpenEnd;
}

const railsOf = (wiring: Wiring, road: string): Rails => wiring.rails.get(road) as Rails;

/** Whether a contact that the pin works is made in a place, with the pin home or out. */
export const isMade = (
  { road, when }: Pick<Pinned, 'road' | 'when'>,
  { holes }: DeckPlace,
  pin: Moment['pin']
): boolean => when[!holes.includes(road) ? 'elsewhere' : pin === 'home' ? 'home' : 'under'];

/** Pairs of conductors that a place joins with the pin home or out: by pin contacts, and by rails that touch. */
export function joinedIn(
  wiring: Wiring,
  place: DeckPlace,
  pin: Moment['pin']
): readonly (readonly [number, number])[] {
  const made = wiring.pinned
    .filter((contact) => isMade(contact, place, pin))
    .map(({ a, b }) => [a, b] as const);
  const touching = wiring.touching
    .filter((pair) =>
      place.joints.some(({ fixed, deckRoad }) => pair.includes(fixed) && pair.includes(deckRoad))
    )
    .map(([one, other]) => [railsOf(wiring, one).feed, railsOf(wiring, other).feed] as const);
  return [...made, ...touching];
}

/** The network of a moment, with locos across these joints. */
export function networkOf(
  plain: Network,
  { place, pin }: Moment,
  across: readonly Joint[]
): Network {
  const { wiring } = plain;
  const wheels = across.flatMap(({ fixed, deckRoad }) =>
    acrossPairs(railsOf(wiring, fixed), railsOf(wiring, deckRoad))
  );
  return momentNetwork(plain, joinedIn(wiring, place, pin), wheels);
}

/**
 * Whether a moment is to a road what the plain wiring is: nothing that the moment joins lies where the
 * road reaches, and it does not short the terminals.
 */
function isPlain(base: Case, network: Network): boolean {
  const { reach } = coneOf(base);
  const [one, other] = base.source.map(network.rep);
  const shorted = one === other && base.source[0] !== base.source[1];
  return !shorted && !network.changed.some((conductor) => reach.has(conductor));
}

/** Each open end of a moment with each source, while locos may stand across these joints. */
export function casesOf(
  plain: Network,
  moment: Moment,
  across = moment.place.joints
): readonly OpenCase[] {
  const network = networkOf(plain, moment, across);
  return moment.place.open.flatMap((end) =>
    plain.wiring.sources.map((source) => {
      const base = { network: plain, source, rails: railsOf(plain.wiring, end.road), end };
      return isPlain(base, network) ? base : { ...base, network };
    })
  );
}

/** Choices of joints across which locos stand, the plainest first: none, one, all. */
export const choicesOf = ({ place: { joints } }: Moment): readonly (readonly Joint[])[] => [
  [],
  ...(joints.length > 1 ? joints.map((joint) => [joint]) : []),
  ...(joints.length > 0 ? [joints] : [])
];
