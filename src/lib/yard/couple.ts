import * as v from 'valibot';
import { lineOf, placeOn } from './line';
import { COUPLING_MM } from './placing';
import { RefusedError } from './refused';
import type { Scene } from './scene';
import type { StockStanding } from './standing';
import { trainWith, vehicleIn, vehicles } from './vehicles';
import type { Yard } from './yard';

/** To what stock is coupled by hand; `none` takes it off. */
export const CoupleSchema = v.record(v.string(), v.string('a loco, other stock, or none'));

/**
 * The stock of a scene once hands have coupled it anew: what stands buffer to buffer, and stands still.
 * @throws RefusedError
 */
export function couple(
  yard: Yard,
  scene: Scene,
  wanted: v.InferOutput<typeof CoupleSchema>
): Scene['stock'] {
  let stock = scene.stock;
  for (const [name, to] of Object.entries(wanted)) {
    const at = stock[name];
    if (!at) throw new RefusedError(`There is no ${name} here.`);
    const loose = { ...at, coupled: undefined };
    if (at.speed !== 0) throw new RefusedError(`${name} moves: stop it first.`);
    if (to === 'none') stock = { ...stock, [name]: loose };
    else {
      mustReach(yard, scene, { name, to, at });
      const train = trainWith({ ...scene, stock: { ...stock, [name]: loose } }, name);
      if (train.includes(to)) throw new RefusedError(`${name} and ${to} are coupled already.`);
      stock = { ...stock, [name]: { ...loose, coupled: to } };
    }
  }
  return stock;
}

interface Pair {
  readonly name: string;
  readonly to: string;
  readonly at: StockStanding;
}

function mustReach(yard: Yard, scene: Scene, { name, to, at }: Pair): void {
  const other = vehicles(scene)[to];
  if (!other) throw new RefusedError(`There is no ${to} here.`);
  const place = placeOn(lineOf(yard, scene.deck, at.road), other) ?? Infinity;
  const halves = (vehicleIn(yard, name).lengthMm + vehicleIn(yard, to).lengthMm) / 2;
  if (Math.abs(place - at.atMm) - halves > COUPLING_MM)
    throw new RefusedError(`${name} does not touch ${to}: bring them together first.`);
}
