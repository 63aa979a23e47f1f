import fc from 'fast-check';
import type { Circuit, Element } from '../../src/lib/circuit';

const nodes = ['0', 'n1', 'n2', 'n3', 'n4', 'n5', 'n6'];
const ends = fc
  .tuple(fc.constantFrom(...nodes), fc.constantFrom(...nodes))
  .filter(([a, b]) => a !== b);
/** 1 mΩ to 10 MΩ, evenly by decade. */
const ohms = fc.double({ min: -3, max: 7, noNaN: true }).map((decade) => 10 ** decade);
/** Whole microvolts: smaller differences are not what these tests are about. */
const volts = fc.integer({ min: -16e6, max: 16e6 }).map((microvolts) => microvolts / 1e6);

type Draft = Element extends infer E
  ? E extends Element
    ? Omit<E, 'id' | 'a' | 'b'>
    : never
  : never;

const resistor = ohms.map((r): Draft => ({ kind: 'resistor', ohms: r }));
const motor = fc
  .tuple(fc.double({ min: 4, max: 50, noNaN: true }), volts)
  .map(([r, emf]): Draft => ({ kind: 'motor', ohms: r, emf }));
const contact = fc
  .tuple(fc.boolean(), ohms)
  .map(([closed, r]): Draft => ({ kind: 'switch', closed, ohms: r }));
const source = fc
  .tuple(volts, ohms)
  .map(([v, r]): Draft => ({ kind: 'source', volts: v, ohms: r }));
const limited = fc
  .tuple(
    volts,
    fc.double({ min: 0.05, max: 5, noNaN: true }),
    fc.double({ min: 0.1, max: 3, noNaN: true })
  )
  .map(([v, r, limit]): Draft => ({ kind: 'source', volts: v, ohms: r, limit }));
const diode = fc
  .tuple(
    fc.double({ min: -20, max: -8, noNaN: true }),
    fc.double({ min: 1, max: 2, noNaN: true }),
    ohms
  )
  .map(([decade, ideality, r]): Draft => ({
    kind: 'diode',
    saturation: 10 ** decade,
    ideality,
    ohms: r
  }));

const circuitOf = (draft: fc.Arbitrary<Draft>): fc.Arbitrary<Circuit> =>
  fc.array(fc.tuple(draft, ends), { minLength: 1, maxLength: 16 }).map((drafts) => ({
    ground: '0',
    elements: [
      { kind: 'resistor', id: 'tie', a: '0', b: 'n1', ohms: 100 },
      ...drafts.map(([draft_, [a, b]], n): Element => ({ ...draft_, id: `E${String(n)}`, a, b }))
    ]
  }));

/** Circuits of everything with resistance, with islands and open switches. */
export const anyCircuit = circuitOf(fc.oneof(resistor, motor, contact, source, limited, diode));

/** Circuits without diodes and limits. */
export const linearCircuit = circuitOf(fc.oneof(resistor, motor, contact, source));

/** Circuits of resistors alone. */
export const resistorCircuit = circuitOf(resistor);

export const renamed = (node: string): string => `other ${[...node].reverse().join('')}`;
