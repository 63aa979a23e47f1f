import { ampsText, secondVolts, type Reading, type Scene, type Yard } from '../yard';
import type { Point, Polyline } from './geometry';
import type { Box } from './geometry';

/** What a controller's box shows. */
export interface ControllerLook {
  readonly id: 'controller' | 'controller 2';
  readonly name: string;
  readonly knob: number;
  readonly fullVolts: number;
  /** Volts from its feed to the return. */
  readonly volts: number;
  /** Whether its supply is off. */
  readonly off: boolean;
  /** What is odd about it; empty where nothing is. */
  readonly note: string;
}

/** The controllers of a yard as they are drawn, the first one on top. */
export function controllerLooks(
  yard: Yard,
  scene: Scene,
  reading: Reading
): readonly ControllerLook[] {
  const { second } = yard;
  const shared = second?.shares === 'supply';
  const limit = (acts: boolean, amps: number) => (acts ? `at its limit, ${ampsText(amps)}` : '');
  const first: ControllerLook = {
    id: 'controller',
    name: second ? 'Controller 1' : 'Controller',
    knob: scene.controller,
    fullVolts: yard.supply.volts,
    volts: reading.between('feed', 'return') ?? 0,
    off: scene.supply === 'off',
    note: limit(reading.limiting, yard.supply.limitAmps)
  };
  if (!second) return [first];
  const own = limit(reading.limits.includes('controller 2'), second.supply.limitAmps);
  return [
    first,
    {
      id: 'controller 2',
      name: 'Controller 2',
      knob: scene.second,
      fullVolts: secondVolts(yard),
      volts: reading.between('feed 2', 'return') ?? 0,
      off: scene.supply === 'off',
      note: shared ? sharedNote(reading) : own || 'a supply of its own'
    }
  ];
}

const sharedNote = ({ supplyShorted }: Reading): string =>
  supplyShorted ? 'short: + meets − in the return' : 'the same supply';

/** Amps out of the second controller's return terminal. */
export const secondReturnAmps = (yard: Yard, { amps }: Reading): number =>
  yard.second?.shares === 'supply'
    ? -amps('controller 2 return on +') - amps('controller 2 return on -')
    : amps('controller 2');

/** From the second controller's return terminal to the first one's. */
export function secondReturn(first: Box, second: Box): Polyline {
  const middle = ({ y, height }: Box) => y + height / 2;
  const x = first.x + first.width + 24;
  const end: Point = { x, y: middle(first) };
  return [{ x: second.x + second.width, y: middle(second) }, { x, y: middle(second) }, end];
}
