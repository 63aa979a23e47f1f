import type { Circuit } from './kinds';
import { prepare } from './prepare';
import type { Solution } from './solution';

/**
 * Solves a circuit of resistors, sources, switches, diodes, motors and current sources on DC.
 *
 * Kirchhoff's laws at every node, each island by itself; nothing hidden joins islands.
 * Volts, ohms and amperes throughout; see each element kind for its law.
 *
 * Errors: a `CircuitError` naming element and field for a circuit that is malformed or has no
 * solution; one for a node or element that the circuit does not hold.
 *
 * @example
 * const s = solve({ ground: '0', elements: [
 *   { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5 },
 *   { kind: 'resistor', id: 'R1', a: 'p', b: '0', ohms: 23.5 } ] });
 * s.volts('p'); // 11.75
 * s.amps('R1'); // 0.5
 */
export const solve = (circuit: Circuit): Solution => prepare(circuit).solve();
