import type { Common, Kind } from './kind';

/** A current driven through the element from a to b, whatever the voltage. */
export interface CurrentSource extends Common {
  readonly kind: 'current';
  readonly amps: number;
}

export const current: Kind<CurrentSource> = {
  kind: 'current',
  noun: 'Current source',
  fields: [{ name: 'amps', rule: 'finite', unit: 'A' }],
  load: false,
  model: ({ amps }) => ({ ohms: Infinity, amps })
};
