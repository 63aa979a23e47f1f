import { limits, placeOn, vehicleIn, vehicles, type Line, type Scene } from '../yard';

export type End = 'west' | 'east';

/** +1 east, −1 west. */
export const sign = (end: End): 1 | -1 => (end === 'east' ? 1 : -1);

/** A train on the move: its vehicles from west to east, among what else stands where. */
export interface Move {
  readonly scene: Scene;
  readonly train: readonly string[];
  /** The line of a road with the deck as it stands. */
  readonly line: (road: string) => Line;
}

/** What a train would meet first. */
export interface Ahead {
  readonly kind: 'backstop' | 'barrier' | 'gap' | 'bump';
  /** The vehicle that would meet it. */
  readonly lead: string;
  readonly other?: string;
  /** How far off it is, mm. */
  readonly roomMm: number;
  /** Where the leading vehicle would stand then, mm along its road. */
  readonly atMm: number;
}

/** What a train meets first on its way west or east: other stock, or what closes the line there. */
export function ahead({ scene, train, line }: Move, end: End): Ahead {
  const lead = train.at(end === 'east' ? -1 : 0) as string;
  const all = vehicles(scene);
  const at = all[lead] as (typeof all)[string];
  const rails = line(at.road);
  const half = vehicleIn(rails.yard, lead).lengthMm / 2;
  const limit = limits(rails, lead)[end];
  let first: Ahead = {
    kind: rails[end].kind,
    lead,
    roomMm: (limit - at.atMm) * sign(end),
    atMm: limit
  };
  for (const [other, standing] of Object.entries(all)) {
    const place = train.includes(other) ? undefined : placeOn(rails, standing);
    const apart = place === undefined ? 0 : (place - at.atMm) * sign(end);
    const roomMm = Math.max(apart - half - vehicleIn(rails.yard, other).lengthMm / 2, 0);
    if (apart <= 0 || roomMm >= first.roomMm) continue;
    first = { kind: 'bump', lead, other, roomMm, atMm: at.atMm + roomMm * sign(end) };
  }
  return first;
}
