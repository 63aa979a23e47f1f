import { thermalVoltage } from '../../tables';
import type { Common, Kind } from './kind';

/**
 * A diode or LED, a its anode: i = saturation·(exp(vj / (ideality·Vt)) − 1), v = vj + i·ohms.
 *
 * Source: W. Shockley, "The theory of p-n junctions in semiconductors", Bell System Technical
 * Journal 28 (1949).
 */
export interface Diode extends Common {
  readonly kind: 'diode';
  readonly saturation: number;
  readonly ideality: number;
  readonly ohms: number;
}

export const diode: Kind<Diode> = {
  kind: 'diode',
  noun: 'Diode',
  fields: [
    { name: 'saturation', rule: 'positive', unit: 'A' },
    { name: 'ideality', rule: 'positive', unit: '' },
    { name: 'ohms', rule: 'natural', unit: 'Ω' }
  ],
  load: true,
  model: ({ saturation, ideality, ohms }) => ({
    ohms,
    junction: { saturation, scale: ideality * thermalVoltage }
  })
};
