/** What is wrong with a circuit or a request. */
export type CircuitErrorCode =
  | 'shape'
  | 'kind'
  | 'id'
  | 'node'
  | 'number'
  | 'range'
  | 'ground'
  | 'loop'
  | 'way-back'
  | 'unknown'
  | 'converge'
  | 'diode';

/** The parts of a `CircuitError`: what, where, the value met, and what to do. */
export interface CircuitFault {
  readonly code: CircuitErrorCode;
  readonly where: string;
  readonly met: string;
  readonly allowed: string;
  /** The field at fault, when it is one field. */
  readonly field?: string | undefined;
}

/**
 * A circuit that cannot be solved, or a question about something it does not hold.
 *
 * The message reads `where: met. allowed`, with an element named by kind and id.
 *
 * @example
 * new CircuitError({ code: 'range', where: 'Resistor R3', met: '−4 Ω',
 *   allowed: 'It must be above 0: give ohms.' }).message
 * // 'Resistor R3: −4 Ω. It must be above 0: give ohms.'
 */
export class CircuitError extends Error implements CircuitFault {
  override readonly name = 'CircuitError';
  readonly code: CircuitErrorCode;
  readonly where: string;
  readonly met: string;
  readonly allowed: string;
  readonly field: string | undefined;

  constructor(fault: CircuitFault) {
    super(`${fault.where}: ${fault.met}. ${fault.allowed}`);
    this.code = fault.code;
    this.where = fault.where;
    this.met = fault.met;
    this.allowed = fault.allowed;
    this.field = fault.field;
  }
}

/** A value as it is printed in an error: numbers with a true minus sign, text in quotes. */
export function shown(value: unknown, unit = ''): string {
  if (typeof value === 'number') {
    return `${String(value).replace('-', '−')}${unit === '' ? '' : ` ${unit}`}`;
  }
  if (typeof value === 'string') return `'${value}'`;
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' && value !== null ? 'an object' : String(value);
}

/** Throws: a node was asked for that the circuit does not hold. */
export function unknownNode(node: unknown): never {
  throw new CircuitError({
    code: 'unknown',
    where: 'Circuit',
    met: `no node ${shown(node)}`,
    allowed: 'Ask for a node that an element names as a or b.'
  });
}

/** Throws: an element was asked for that the circuit does not hold. */
export function unknownElement(id: unknown): never {
  throw new CircuitError({
    code: 'unknown',
    where: 'Circuit',
    met: `no element ${shown(id)}`,
    allowed: 'Ask for the id of an element of this circuit.'
  });
}
