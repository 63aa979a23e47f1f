import type { Common, Kind } from './kind';

/** A resistance above 0 Ω: v = i·R. */
export interface Resistor extends Common {
  readonly kind: 'resistor';
  readonly ohms: number;
}

export const resistor: Kind<Resistor> = {
  kind: 'resistor',
  noun: 'Resistor',
  fields: [{ name: 'ohms', rule: 'positive', unit: 'Ω' }],
  load: false,
  model: ({ ohms }) => ({ ohms })
};
