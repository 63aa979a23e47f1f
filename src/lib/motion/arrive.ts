import {
  beyond,
  locoNamed,
  roadNamed,
  within,
  type Scene,
  type Standing,
  type Yard
} from '../yard';
import type { Arrival } from './event';

type End = 'west' | 'east';

/** A loco on the move: what else stands where, on which deck. */
export interface Move {
  readonly yard: Yard;
  readonly scene: Scene;
  readonly name: string;
}

/** Where a loco that wants to be at `at` really is: held, gone over a joint, or fallen. */
export function arrive(move: Move, at: Standing): Arrival {
  if (at.speed === 0) return { standing: at };
  const end: End = at.speed > 0 ? 'east' : 'west';
  return bumped(move, at, end) ?? ended(move, at, end) ?? { standing: at };
}

const ahead = (end: End): 1 | -1 => (end === 'east' ? 1 : -1);

function ended(move: Move, at: Standing, end: End): Arrival | undefined {
  const { yard, scene, name } = move;
  const next = beyond(yard, scene.deck, at.road, end);
  const where = { loco: name, end };
  if (next.kind === 'barrier' || next.kind === 'backstop') {
    const limit = within({ yard, deck: scene.deck, road: at.road }, name, ahead(end) * Infinity);
    if ((at.atMm - limit) * ahead(end) < 0) return undefined;
    return {
      standing: { ...at, atMm: limit, speed: 0 },
      event: { ...where, kind: next.kind, road: at.road }
    };
  }
  const { lengthMm } = roadNamed(yard, at.road);
  const over = end === 'east' ? at.atMm - lengthMm : -at.atMm;
  if (next.kind === 'gap') {
    if (over + locoNamed(name).pickupSpanMm / 2 <= 0) return undefined;
    return {
      standing: { ...at, speed: 0, fallen: true },
      event: { ...where, kind: 'gap', road: at.road }
    };
  }
  if (over <= 0) return undefined;
  const onto = roadNamed(yard, next.road);
  const atMm = end === 'east' ? over : onto.lengthMm - over;
  return {
    standing: { ...at, road: onto.name, atMm },
    event: { ...where, kind: 'joint', road: onto.name }
  };
}

/** Stock in the way, on the same road or on the next one. */
function bumped(move: Move, at: Standing, end: End): Arrival | undefined {
  const { scene, name } = move;
  const half = locoNamed(name).lengthMm / 2;
  for (const [other, standing] of Object.entries(scene.locos)) {
    const place = other === name ? undefined : along(move, at, standing);
    if (place === undefined) continue;
    const room = (place - at.atMm) * ahead(end) - half - locoNamed(other).lengthMm / 2;
    const isAhead = (place - at.atMm) * ahead(end) > 0;
    if (!isAhead || room > 0) continue;
    return {
      standing: { ...at, atMm: at.atMm + room * ahead(end), speed: 0 },
      event: { kind: 'bump', loco: name, end, road: at.road, other }
    };
  }
  return undefined;
}

/** Place of other stock in mm along the road of `at`; undefined where no rails lead to it. */
function along({ yard, scene }: Move, at: Standing, other: Standing): number | undefined {
  if (other.fallen) return undefined;
  if (other.road === at.road) return other.atMm;
  const leads = (end: End) => {
    const next = beyond(yard, scene.deck, at.road, end);
    return next.kind === 'road' && next.road === other.road;
  };
  if (leads('east')) return roadNamed(yard, at.road).lengthMm + other.atMm;
  return leads('west') ? other.atMm - roadNamed(yard, other.road).lengthMm : undefined;
}
