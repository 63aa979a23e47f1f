import { solve } from '../../src/lib/circuit';
import type { Circuit, Element, Solution } from '../../src/lib/circuit';

type Ends = readonly [a: string, b: string];

/** Short ways to write the elements of a worked circuit; each is its own id. */
export const R = (id: string, [a, b]: Ends, ohms: number): Element => ({
  kind: 'resistor',
  id,
  a,
  b,
  ohms
});

export const G = (id: string, [a, b]: Ends, volts: number, ohms = 0): Element => ({
  kind: 'source',
  id,
  a,
  b,
  volts,
  ohms
});

export const J = (id: string, [a, b]: Ends, amps: number): Element => ({
  kind: 'current',
  id,
  a,
  b,
  amps
});

export const M = (id: string, [a, b]: Ends, ohms: number, emf = 0): Element => ({
  kind: 'motor',
  id,
  a,
  b,
  ohms,
  emf
});

export const S = (id: string, [a, b]: Ends, ohms: number, closed = true): Element => ({
  kind: 'switch',
  id,
  a,
  b,
  closed,
  ohms
});

/** A diode from a to b: saturation current, A, and ideality. */
export const D = (id: string, [a, b]: Ends, saturation: number, ideality = 1): Element => ({
  kind: 'diode',
  id,
  a,
  b,
  saturation,
  ideality,
  ohms: 0
});

export const grounded = (...elements: Element[]): Circuit => ({ ground: '0', elements });

/** Solves elements against ground '0'. */
export const solved = (...elements: Element[]): Solution => solve(grounded(...elements));

/** A chain of resistors from p to 0, one for each value, named R1, R2, …. */
export function chain(...ohms: number[]): Element[] {
  const node = (n: number): string => (n === 0 ? 'p' : n === ohms.length ? '0' : `n${String(n)}`);
  return ohms.map((r, n) => R(`R${String(n + 1)}`, [node(n), node(n + 1)], r));
}
