import type { DeckPlace, Joint, OpenEnd } from './places';
import { acrossPairs, joinedNetwork, type Network } from './network';
import type { Case } from './count';
import type { Rails, Wiring } from './wiring';

/** A deck place with the pin home or out. */
export interface Moment {
  readonly place: DeckPlace;
  readonly pin: 'home' | 'out';
}

/** Every place with the pin out, and home where there is a hole. */
export const momentsOf = (places: readonly DeckPlace[]): readonly Moment[] =>
  places.flatMap((place) => [
    ...(place.holes.length > 0 ? [{ place, pin: 'home' as const }] : []),
    { place, pin: 'out' as const }
  ]);

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

/** Each open end of a moment with each placing of locos across its joints. */
export function casesOf(plain: Network, { place, pin }: Moment): readonly OpenCase[] {
  const { wiring } = plain;
  const home = wiring.pinned
    .filter(({ road }) => pin === 'home' && place.holes.includes(road))
    .map(({ a, b }) => [a, b] as const);
  return choices(place.joints).flatMap((across) => {
    const wheels = across.flatMap(({ fixed, deckRoad }) =>
      acrossPairs(railsOf(wiring, fixed), railsOf(wiring, deckRoad))
    );
    const network = joinedNetwork(plain, [...home, ...wheels]);
    return place.open.map((end) => ({ network, rails: railsOf(wiring, end.road), end, across }));
  });
}
