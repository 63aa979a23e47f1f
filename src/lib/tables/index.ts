export { contacts, voltmeterOhms } from './contact';
export type { Contact, ContactEntry } from './contact';
export { atTemperature, metals } from './metal';
export type { Metal, MetalEntry } from './metal';
export { foot, inch, thermalVoltage } from './physics';
export { railAreaFactor, railHeight, railOhmsPerMetre } from './rail';
export { gaugeDiameter, strandedSizes, wireAreaMm2, wireOhmsPerMetre } from './wire';
export type { WireSize } from './wire';
