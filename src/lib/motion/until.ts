import { roadNamed, trainWith, vehicleIn, vehicles, type Scene, type Yard } from '../yard';
import { TICKS_PER_SECOND, type Drive } from './drive';
import type { Until } from './sequence';

/** Whether a drive has come to where it should end. */
export function isDone(yard: Yard, { scene, events, tick }: Drive, until: Until): boolean {
  if ('seconds' in until) return tick >= until.seconds * TICKS_PER_SECOND;
  const train = trainWith(scene, until.loco);
  const mine = events.filter(({ loco }) => train.includes(loco));
  if ('at' in until) return mine.some(({ kind }) => kind === 'barrier' || kind === 'backstop');
  if ('meets' in until)
    return mine.some(({ kind, other }) => kind === 'bump' && other === until.meets);
  return train.every((name) => standsOn(yard, scene, { name, road: until.on }));
}

/** Whether a vehicle stands on a road, or on a section of one, from buffer to buffer. */
function standsOn(
  yard: Yard,
  scene: Scene,
  { name, road }: { readonly name: string; readonly road: string }
): boolean {
  const at = vehicles(scene)[name];
  if (!at || at.fallen) return false;
  const { whole, lengthMm, next } = roadNamed(yard, at.road);
  const half = vehicleIn(yard, name).lengthMm / 2;
  const inner = at.road === road ? {} : next;
  const clear =
    (inner.west !== undefined || at.atMm >= half) &&
    (inner.east !== undefined || at.atMm <= lengthMm - half);
  return (whole === road || at.road === road) && clear;
}
