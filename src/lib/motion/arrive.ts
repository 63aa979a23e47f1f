import { hop, vehicles, type Standing } from '../yard';
import { ahead, sign, type Ahead, type End, type Move } from './ahead';
import type { Arrival, Happened } from './event';

/** Steps of a train: how far it wants to go, mm, and how fast it is then, m/s; east positive. */
export interface Stride {
  readonly byMm: number;
  readonly speed: number;
}

/** Where a train really comes to: held, gone over joints, or its leading vehicle fallen. */
export function arrive(move: Move, stride: Stride): Arrival {
  if (stride.byMm === 0) return { standings: moved(move, stride), events: [] };
  const end: End = stride.byMm > 0 ? 'east' : 'west';
  const first = ahead(move, end);
  const free = Math.abs(stride.byMm) < first.roomMm || isOnEdge(first, stride);
  if (free) {
    const standings = moved(move, stride);
    return { standings, events: joints(move, standings, end) };
  }
  return first.kind === 'gap' ? fell(move, stride, first) : held(move, first, end);
}

/** Wheels just on the last of the rails are on rails. */
const isOnEdge = ({ kind, roomMm }: Ahead, { byMm }: Stride): boolean =>
  kind === 'gap' && Math.abs(byMm) === roomMm;

type Standings = Arrival['standings'];

function moved({ scene, train, line }: Move, { byMm, speed }: Stride): Standings {
  const all = vehicles(scene);
  return Object.fromEntries(
    train.map((name) => {
      const at = all[name] as Standing;
      if (byMm === 0) return [name, { ...at, speed }];
      const to = { road: at.road, atMm: at.atMm + byMm };
      return [name, { ...at, ...hop(line(at.road), to), speed }];
    })
  );
}

function held(move: Move, first: Ahead, end: End): Arrival {
  const { kind, lead, other, roomMm } = first;
  const standings = moved(move, { byMm: roomMm * sign(end), speed: 0 });
  const at = vehicles(move.scene)[lead] as Standing;
  const stands = hop(move.line(at.road), { road: at.road, atMm: first.atMm });
  const event = { kind, loco: lead, end, road: stands.road, ...(other ? { other } : {}) };
  return {
    standings: { ...standings, [lead]: { ...at, ...stands, speed: 0 } },
    events: [...joints(move, standings, end), event],
    contact: `${lead} ${end} ${other ?? ''}`
  };
}

function fell(move: Move, { byMm }: Stride, { lead }: Ahead): Arrival {
  const end: End = byMm > 0 ? 'east' : 'west';
  const standings = moved(move, { byMm, speed: 0 });
  const before = vehicles(move.scene)[lead] as Standing;
  const after = { ...(standings[lead] as Standing), fallen: true };
  return {
    standings: { ...standings, [lead]: after },
    events: [{ kind: 'gap', loco: lead, end, road: before.road }]
  };
}

/** Vehicles that went over onto another road. */
const joints = ({ scene }: Move, standings: Standings, end: End): readonly Happened[] =>
  Object.entries(standings).flatMap(([loco, { road }]) =>
    road === vehicles(scene)[loco]?.road ? [] : [{ kind: 'joint' as const, loco, end, road }]
  );
