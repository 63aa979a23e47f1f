import type { Finding } from './border';
import { hop, limits, lineOf, placeOn } from './line';
import { locosOf } from './locos';
import { roadNamed, roads } from './road';
import type { Place, Standing, StockPlace, StockStanding } from './standing';
import { stockAllowed, stockNamed, vehicleIn } from './vehicles';
import type { Yard } from './yard';

interface Given {
  readonly locos: Readonly<Record<string, Place>>;
  readonly stock: Readonly<Record<string, StockPlace>>;
}
interface Placed {
  readonly locos: Readonly<Record<string, Standing>>;
  readonly stock: Readonly<Record<string, StockStanding>>;
  readonly findings: readonly Finding[];
}
interface Ground {
  readonly yard: Yard;
  readonly deck: number;
}

/** Arithmetic may leave vehicles this deep in one another, mm. */
const SLACK_MM = 1e-6;
/** Couplings reach so far from buffer to buffer, mm. Source: common practice. */
export const COUPLING_MM = 3;

/** What is placed so far, and what could not be. */
interface Work {
  readonly ground: Ground;
  readonly placed: Map<string, StockStanding>;
  readonly findings: Finding[];
}

/**
 * Where all vehicles stand: those on a road as near to the place named as they can be, coupled stock
 * beside what it is coupled to; and what cannot be, with what is allowed.
 */
export function placeAll(yard: Yard, deck: number, { locos, stock }: Given): Placed {
  const work: Work = { ground: { yard, deck }, placed: new Map(), findings: [] };
  const names = locosOf(yard).map(({ name }) => name);
  for (const [name, at] of Object.entries(locos)) {
    const known = names.includes(name);
    const unknown = { met: `unknown loco '${name}'`, allowed: names.join(', ') };
    keep(work, ['locos', name], known ? onRoad(work.ground, name, at) : unknown);
  }
  let waiting = Object.entries(stock);
  for (let before = -1; before !== waiting.length;) {
    before = waiting.length;
    waiting = waiting.filter(([name, place]) => !placeStock(work, name, place));
  }
  for (const [name, { behind, ahead, coupled }] of waiting) {
    const met = `coupled to '${behind ?? ahead ?? coupled}'`;
    keep(work, ['stock', name], { met, allowed: [...work.placed.keys()].join(', ') || 'a loco' });
  }
  const of = (names: object) =>
    Object.fromEntries([...work.placed].filter(([name]) => name in names));
  return { locos: of(locos), stock: of(stock), findings: work.findings };
}

/** Places one piece of stock; false while what it is coupled to is not placed itself. */
function placeStock(work: Work, name: string, place: StockPlace): boolean {
  const path: [string, string] = ['stock', name];
  const to = place.behind ?? place.ahead ?? place.coupled;
  const at = to === undefined ? undefined : work.placed.get(to);
  if (!stockNamed(name)) keep(work, path, { met: `stock '${name}'`, allowed: stockAllowed });
  else if (to !== undefined && !at) return false;
  else if (to !== undefined && at && place.road === undefined) {
    keep(work, path, beside(work.ground, name, { place, to, at }));
  } else keep(work, path, onRoad(work.ground, name, place));
  return true;
}

function keep(
  { ground, placed, findings }: Work,
  path: [string, string],
  at: StockStanding | Amiss
) {
  const [, name] = path;
  const amiss = 'allowed' in at ? at : clash(ground, placed, { name, at });
  if (amiss) findings.push({ path, ...amiss });
  if (!('allowed' in at)) placed.set(name, at);
}

type Amiss = Pick<Finding, 'met' | 'allowed'>;
/** A vehicle on a road, as near to its place as barriers, backstops and the gap let it be. */
function onRoad({ yard, deck }: Ground, name: string, place: StockPlace): StockStanding | Amiss {
  const { road = '', atMm, faces, speed, fallen, coupled } = place;
  const rest = { faces, speed, fallen, ...(coupled === undefined ? {} : { coupled }) };
  if (!roads(yard).includes(road))
    return { met: `road '${road}'`, allowed: roads(yard).join(', ') };
  const { lengthMm } = roadNamed(yard, road);
  const wanted = Math.min(Math.max(atMm ?? lengthMm / 2, 0), lengthMm);
  if (place.fallen) return { ...rest, road, atMm: wanted };
  const line = lineOf(yard, deck, road);
  const { west, east } = limits(line, name);
  if (west > east) return { met: `road ${road}, shorter than ${name}`, allowed: 'a longer road' };
  return { ...rest, ...hop(line, { road, atMm: Math.min(Math.max(wanted, west), east) }) };
}

interface Beside {
  readonly place: StockPlace;
  readonly to: string;
  readonly at: Standing;
}

/** Stock buffer to buffer with what it is coupled to. */
function beside(
  { yard, deck }: Ground,
  name: string,
  { place, to, at }: Beside
): StockStanding | Amiss {
  const side = (at.faces === 'east') === (place.ahead !== undefined) ? 1 : -1;
  const apart = (vehicleIn(yard, name).lengthMm + vehicleIn(yard, to).lengthMm) / 2;
  const line = lineOf(yard, deck, at.road);
  const atMm = at.atMm + side * apart;
  const { west, east } = limits(line, name);
  if (atMm < west || atMm > east) {
    const where = place.ahead === undefined ? 'behind' : 'ahead of';
    return { met: `${where} ${to}, where the rails end`, allowed: 'rails for the whole train' };
  }
  const { faces, speed } = at;
  return { ...hop(line, { road: at.road, atMm }), faces, speed, fallen: false, coupled: to };
}

/** Whether a vehicle stands where another does, or apart from what it is coupled to. */
function clash(
  { yard, deck }: Ground,
  placed: ReadonlyMap<string, StockStanding>,
  { name, at }: { readonly name: string; readonly at: StockStanding }
): Amiss | undefined {
  if (at.fallen || placed.size === 0) return undefined;
  const line = lineOf(yard, deck, at.road);
  for (const [other, there] of placed) {
    const place = placeOn(line, there);
    const halves = (vehicleIn(yard, name).lengthMm + vehicleIn(yard, other).lengthMm) / 2;
    const room = place === undefined ? Infinity : Math.abs(place - at.atMm) - halves;
    if (room < -SLACK_MM) {
      return { met: `road ${at.road}, where ${other} stands`, allowed: 'a road of its own' };
    }
    if (at.coupled === other && !there.fallen && room > COUPLING_MM) {
      return {
        met: `coupled to ${other}, which is out of reach`,
        allowed: 'stock buffer to buffer'
      };
    }
  }
  return undefined;
}
