/** What a conductor may carry, and how far that is to be trusted. */
export interface Ampacity {
  readonly amps: number;
  readonly source: string;
}

const liberal = 'community wire table, about 10 A/mm²; single wire, guide only; less in bundles';
const equipment = 'equipment-wire catalogues, 70 °C PVC, single, free air, from memory';

/** Usual rating of stranded equipment wire by size. Source: see each entry. */
export const equipmentWireAmps: Readonly<Record<string, Ampacity>> = {
  '7/0.2': { amps: 1.4, source: equipment },
  '16/0.2': { amps: 3, source: equipment },
  '24/0.2': { amps: 4.5, source: equipment },
  '32/0.2': { amps: 6, source: equipment }
};

/** Most that single hook-up wire may carry, ±20 %. Source: see each entry. */
export const liberalWireAmps: Readonly<Record<string, Ampacity>> = {
  '7/0.2': { amps: 2.2, source: liberal },
  '14/0.2': { amps: 4.5, source: liberal },
  '16/0.2': { amps: 5, source: liberal },
  '24/0.2': { amps: 7.5, source: liberal }
};

const fixed = 'university physics wiki quoting a cable maker, stationary wiring, ±1 A';

/** Fixed wiring by area. Source: see each entry. */
export const fixedWiringAmps: Readonly<Record<string, Ampacity>> = {
  '0.25 mm²': { amps: 4, source: fixed },
  '0.75 mm²': { amps: 12, source: fixed },
  '1 mm²': { amps: 15, source: fixed },
  '2.5 mm²': { amps: 26, source: fixed }
};

const code = 'Lessons in Electric Circuits I, conductor ampacity; free air, 60 °C insulation';

/** American gauges in free air at 30 °C. Source: see each entry. */
export const gaugeAmps: Readonly<Record<string, Ampacity>> = {
  'AWG 20': { amps: 9, source: code },
  'AWG 16': { amps: 18, source: code },
  'AWG 14': { amps: 25, source: code },
  'AWG 10': { amps: 40, source: code }
};
