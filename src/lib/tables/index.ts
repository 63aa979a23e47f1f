export { equipmentWireAmps, fixedWiringAmps, gaugeAmps, liberalWireAmps } from './ampacity';
export { colourCodes, colourSchemes, type ColourCode, type ColouredWire } from './colour';
export {
  backTo20,
  conductorLimits,
  dropEachWay,
  dropShare,
  fineWireLimits,
  permissibleLength,
  type ConductorClass
} from './conductor';
export { contacts, meterError, voltmeterOhms } from './contact';
export { classLetters, type DesignationClass } from './designation';
export {
  droppingOhms,
  guardDiode,
  ledIdeality,
  ledReverseVolts,
  leds,
  saturationFrom
} from './led';
export { atTemperature, metals } from './metal';
export { atLoad, bestEfficiency, motorFrom, revolutionsPerMinute, stallTorque } from './motor';
export { circularMil, foot, inch, thermalVoltage } from './physics';
export { railHeight, railOhmsPerMetre } from './rail';
export { scales, type Scale } from './scale';
export { nearest, nextAbove, series, type Series } from './series';
export { gaugeDiameter, sizeWords, strandedSizes, wireAreaMm2, wireOhmsPerMetre } from './wire';
export { contactAmps, fuseFor, silverLeastAmps, spoiltAfter, wireAmps } from './rating';
export { panelParts, panelRoom, type PanelPart, type PanelPartKind } from './panelPart';
