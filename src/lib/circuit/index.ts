export { CircuitError } from './errors';
export { groups, Sets, type Groups } from './groups';
export type { Circuit, Element } from './kinds';
export { prepare, type Prepared } from './prepare';
export type { Solution } from './solution';
export { solve } from './solve';
export { trace, type Trace } from './trace';
export { drops, isLoad, why } from './why';
