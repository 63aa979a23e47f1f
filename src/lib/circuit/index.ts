export { CircuitError } from './errors';
export type { CircuitErrorCode, CircuitFault } from './errors';
export { groups, Sets } from './groups';
export type { Groups } from './groups';
export type {
  Circuit,
  CurrentSource,
  Diode,
  Element,
  Motor,
  Resistor,
  Source,
  Switch
} from './kinds';
export { prepare } from './prepare';
export type { Changes, Prepared } from './prepare';
export type { Solution } from './solution';
export { solve } from './solve';
export { trace } from './trace';
export type { Trace, TraceOptions, TraceStep } from './trace';
export { drops, isLoad, why } from './why';
export type { Drop, Why } from './why';
