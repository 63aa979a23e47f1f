import type { Yard } from '../../yard';
import { deckPlaces, pinnedPlaces, type DeckPlace, type Joint, type OpenEnd } from './places';
import { acrossPairs, joinedNetwork, type Network } from './network';
import type { Case } from './loop';
import type { Pinned, Rails, Wiring } from './wiring';

/** A deck place with the pin home or out. */
export interface Moment {
  readonly place: DeckPlace;
  readonly pin: 'home' | 'out';
}

/** Every place with the pin out, and every hole with the pin home. */
export const momentsOf = (yard: Yard): readonly Moment[] => [
  ...pinnedPlaces(yard).map((place) => ({ place, pin: 'home' as const })),
  ...deckPlaces(yard).map((place) => ({ place, pin: 'out' as const }))
];

/** A case with how it comes about. */
export interface OpenCase extends Case {
  readonly end: OpenEnd;
  /** Joints across which a loco stands. */
  readonly across: readonly Joint[];
}

/** Every choice of joints across which locos stand, none first. */
const choices = (joints: readonly Joint[]): readonly (readonly Joint[])[] =>
  joints.reduce<readonly (readonly Joint[])[]>(
    (all, joint) => [...all, ...all.map((some) => [...some, joint])],
    [[]]
  );

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
  return joinedNetwork(plain, [...made, ...touching, ...wheels]);
}

/** Each open end of a moment with each placing of locos across its joints. */
export const casesOf = (plain: Network, moment: Moment): readonly OpenCase[] =>
  choices(moment.place.joints).flatMap((across) => {
    const network = networkOf(plain, moment, across);
    return moment.place.open.flatMap((end) =>
      plain.wiring.sources.map((source) => ({
        network,
        source,
        rails: railsOf(plain.wiring, end.road),
        end,
        across
      }))
    );
  });
