import type { Common, Kind } from './kind';

/**
 * An EMF with a series resistance (0 Ω allowed) and, if given, a current limit.
 *
 * With v = V(a) − V(b), the current out of a is clamp((volts − v) / ohms, ±limit).
 */
export interface Source extends Common {
  readonly kind: 'source';
  readonly volts: number;
  readonly ohms: number;
  readonly limit?: number | undefined;
}

export const source: Kind<Source> = {
  kind: 'source',
  noun: 'Source',
  fields: [
    { name: 'volts', rule: 'finite', unit: 'V' },
    { name: 'ohms', rule: 'natural', unit: 'Ω' },
    { name: 'limit', rule: 'positive', unit: 'A', optional: true }
  ],
  load: false,
  model: ({ volts, ohms, limit }) => ({ ohms, emf: volts, limit })
};
