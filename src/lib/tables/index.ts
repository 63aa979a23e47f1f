export { equipmentWireAmps, fixedWiringAmps, gaugeAmps, liberalWireAmps } from './ampacity';
export type { Ampacity } from './ampacity';
export { colourCodes, colourSchemes, type ColourCode, type ColouredWire } from './colour';
export {
  backTo20,
  conductorLimits,
  dropEachWay,
  dropShare,
  fineWireLimits,
  permissibleLength
} from './conductor';
export type { ConductorClass, ConductorLimit } from './conductor';
export { contacts, meterError, voltmeterOhms } from './contact';
export type { Contact, ContactEntry } from './contact';
export { classLetters, type DesignationClass } from './designation';
export {
  droppingOhms,
  guardDiode,
  ledIdeality,
  ledReverseVolts,
  leds,
  saturationFrom
} from './led';
export type { LedColour, LedEntry } from './led';
export { atTemperature, metals } from './metal';
export type { Metal, MetalEntry } from './metal';
export {
  atLoad,
  bestEfficiency,
  motorFrom,
  radPerSecond,
  revolutionsPerMinute,
  stallTorque
} from './motor';
export type { MotorFigures, MotorModel, MotorState } from './motor';
export { circularMil, foot, inch, thermalVoltage } from './physics';
export { railAreaFactor, railHeight, railOhmsPerMetre } from './rail';
export { scales, type Scale, type ScaleEntry } from './scale';
export { nearest, nextAbove, series } from './series';
export type { Series } from './series';
export { gaugeDiameter, sizeWords, strandedSizes, wireAreaMm2, wireOhmsPerMetre } from './wire';
export type { WireSize } from './wire';
export { contactAmps, fuseFor, silverLeastAmps, spoiltAfter, wireAmps } from './rating';
export { panelParts, panelRoom, type PanelPart, type PanelPartKind } from './panelPart';
