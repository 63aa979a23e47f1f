import { wireOhmsPerMetre } from '../tables';
import type { Part } from './runs';
import type { Yard } from './yard';

/** Size and length of a piece of wire. */
export type Length = Yard['wires']['main'];

/** A piece of wire as a part. */
export const wirePart = (id: string, length: Length): Part => ({
  id,
  kind: 'wire',
  ohms: wireOhmsPerMetre(length.size) * length.lengthM,
  closed: true
});
