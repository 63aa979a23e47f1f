export { act, ActionSchema, type Action } from './action';
export { RefusedError } from './refused';
export { beyond, facing, holeAt, holes, travel, type Facing, type Hole } from './deck';
export { admit, BorderError, met, type Finding } from './border';
export { apply, circuitOf, elementsIn, elementsOf, spoilt, withHands } from './apply';
export { applyEdit, EditSchema, editKinds, editWords, isHeld, type Edit } from './edits';
export {
  faulted,
  faultKinds,
  faultName,
  faultParts,
  FaultSchema,
  faultsOf,
  faultWords,
  isByDeck,
  onlyOpens,
  repairWords,
  type Fault
} from './faults';
export { plugContacts } from './faults/parts';
export { wireColours } from './colours';
export { lampRoads, type LampState } from './lamps';
export { type Level } from './levels';
export {
  fleetOf,
  locoIn,
  locoNamed,
  locoNames,
  locosOf,
  motorConstant,
  startingVolts,
  type Loco
} from './locos';
export { fitWhole } from './fitWhole';
export { once } from './once';
export { findPoint, pointName, points, probedRoads, sidesOf, type Point } from './points';
export {
  BUZZ_OHMS,
  instrumentBetween,
  isProbe,
  litBy,
  ohmsOf,
  switchedProbe,
  type Lit
} from './probe';
export { liveRoads, read, type Reading, type Why } from './reading';
export {
  placed,
  PlaceError,
  places,
  type Instrument,
  type Part,
  type Placed,
  type Run
} from './runs';
export { fit, KnobSchema, SceneSchema, type Scene, type Standing } from './scene';
export {
  actionWords,
  ampsText,
  countWords,
  joinWords,
  knobWords,
  levelWords,
  meterVoltsText,
  ohmsText,
  sceneWords,
  sentence,
  stopWords,
  voltsText
} from './words';
export { symptomWords } from './symptom-words';
export { symptomsIn, type Symptom } from './symptoms';
export { trialsOf, type Trial } from './trials';
export { CENTRE_VOLTS, feedOf, secondVolts } from './second';
export {
  flip,
  isOn,
  selectorPositions,
  selectorStands,
  selectorWords,
  switchedRoads,
  switchPlace,
  switchWord,
  toggleRoads
} from './switching';
export { shown, type Shown } from './shown';
export { limits, lineOf, hop, placeOn, type Line } from './line';
export {
  locoOf,
  restood,
  runsTo,
  still,
  stockNamed,
  trainsOf,
  trainWith,
  vehicleIn,
  vehicles,
  vehicleWords
} from './vehicles';
export { deckRoom, leadMm } from './room';
export { touches } from './wheels';
export { pinnedRoads, wire } from './wire';
export {
  deckRoads,
  eastMm,
  roadNamed,
  roads,
  roadsOf,
  wholeRoads,
  roadTitle,
  type Road
} from './road';
export { MAX_STABLING, MAX_STORAGE, YardSchema, type Yard, type YardInput } from './yard';
