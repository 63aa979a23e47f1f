import { wireOhmsPerMetre } from '../tables';
import type { Length, Part } from './runs';

/** A piece of wire as a part. */
export const wirePart = (id: string, wire: Length): Part => ({
  id,
  kind: 'wire',
  ohms: wireOhmsPerMetre(wire.size) * wire.lengthM,
  closed: true,
  wire
});
