import type { Common, Kind } from './kind';

/** A permanent-magnet motor: v = i·ohms + emf, emf above 0 when a is positive against b. */
export interface Motor extends Common {
  readonly kind: 'motor';
  readonly ohms: number;
  readonly emf: number;
}

export const motor: Kind<Motor> = {
  kind: 'motor',
  noun: 'Motor',
  fields: [
    { name: 'ohms', rule: 'positive', unit: 'Ω' },
    { name: 'emf', rule: 'finite', unit: 'V' }
  ],
  load: true,
  model: ({ ohms, emf }) => ({ ohms, emf })
};
