import { roadNamed, type Yard } from '../../yard';
import { deckPlaces, pinnedPlaces, type DeckPlace, type Joint, type OpenEnd } from './places';
import { acrossPairs, momentNetwork, type Network } from './network';
import type { Case } from './loop';
import type { Pinned, Rails, Wiring } from './wiring';

/** A deck place with the pin home or out. */
export interface Moment {
  readonly place: DeckPlace;
  readonly pin: 'home' | 'out';
}

/** A place without the ends at which a stop holds a loco whenever nothing faces them. */
const stopped = (yard: Yard, place: DeckPlace): DeckPlace => ({
  ...place,
  open: place.open.filter(({ road }) => !yard.endStops.includes(roadNamed(yard, road).whole))
});

/** Every place with the pin out, and every hole with the pin home. */
export const momentsOf = (yard: Yard): readonly Moment[] => [
  ...pinnedPlaces(yard).map((place) => ({ place: stopped(yard, place), pin: 'home' as const })),
  ...deckPlaces(yard).map((place) => ({ place: stopped(yard, place), pin: 'out' as const }))
];

/** A case with the end it is about. */
export interface OpenCase extends Case {
  readonly end: OpenEnd;
}

const railsOf = (wiring: Wiring, road: string): Rails => wiring.rails.get(road) as Rails;

const isMade = ({ road, when }: Pinned, { holes }: DeckPlace, pin: Moment['pin']): boolean =>
  when[!holes.includes(road) ? 'elsewhere' : pin === 'home' ? 'home' : 'under'];

/** The network of a moment, with locos across these joints. */
export function networkOf(
  plain: Network,
  { place, pin }: Moment,
  across: readonly Joint[]
): Network {
  const { wiring } = plain;
  const made = wiring.pinned
    .filter((contact) => isMade(contact, place, pin))
    .map(({ a, b }) => [a, b] as const);
  const touching = wiring.touching
    .filter((pair) =>
      place.joints.some(({ fixed, deckRoad }) => pair.includes(fixed) && pair.includes(deckRoad))
    )
    .map(([one, other]) => [railsOf(wiring, one).feed, railsOf(wiring, other).feed] as const);
  const wheels = across.flatMap(({ fixed, deckRoad }) =>
    acrossPairs(railsOf(wiring, fixed), railsOf(wiring, deckRoad))
  );
  return momentNetwork(plain, [...made, ...touching], wheels);
}

/** Each open end of a moment with each source, while locos may stand across these joints. */
export function casesOf(
  plain: Network,
  moment: Moment,
  across = moment.place.joints
): readonly OpenCase[] {
  const network = networkOf(plain, moment, across);
  return moment.place.open.flatMap((end) =>
    plain.wiring.sources.map((source) => ({
      network,
      source,
      rails: railsOf(plain.wiring, end.road),
      end
    }))
  );
}

/** Choices of joints across which locos stand, the plainest first: none, one, all. */
export const choicesOf = ({ place: { joints } }: Moment): readonly (readonly Joint[])[] => [
  [],
  ...(joints.length > 1 ? joints.map((joint) => [joint]) : []),
  ...(joints.length > 0 ? [joints] : [])
];
