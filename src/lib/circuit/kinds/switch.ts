import type { Common, Kind } from './kind';

/** A contact: its resistance when closed (0 Ω allowed), no connection at all when open. */
export interface Switch extends Common {
  readonly kind: 'switch';
  readonly closed: boolean;
  readonly ohms: number;
}

export const contact: Kind<Switch> = {
  kind: 'switch',
  noun: 'Switch',
  fields: [
    { name: 'closed', rule: 'boolean', unit: '' },
    { name: 'ohms', rule: 'natural', unit: 'Ω' }
  ],
  load: false,
  model: ({ closed, ohms }) => ({ ohms: closed ? ohms : Infinity })
};
