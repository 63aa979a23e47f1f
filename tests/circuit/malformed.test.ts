import { describe, expect, test } from 'vitest';
import { CircuitError, solve } from '../../src/lib/circuit';
import type { Circuit } from '../../src/lib/circuit';

type Loose = Record<string, unknown>;

const tie = { kind: 'resistor', id: 'tie', a: '0', b: 'p', ohms: 1 };
const resistor = { kind: 'resistor', id: 'R3', a: 'p', b: '0', ohms: 4 };
const source = { kind: 'source', id: 'G1', a: 'p', b: '0', volts: 12, ohms: 0.5 };
const contact = { kind: 'switch', id: 'S1', a: 'p', b: 'q', closed: true, ohms: 0.02 };
const diode = { kind: 'diode', id: 'D1', a: 'p', b: '0', saturation: 1e-14, ideality: 1, ohms: 0 };
const motor = { kind: 'motor', id: 'M1', a: 'p', b: '0', ohms: 16, emf: 0 };
const current = { kind: 'current', id: 'J1', a: 'p', b: '0', amps: 0.01 };
const without = (element: Loose, field: string): Loose =>
  Object.fromEntries(Object.entries(element).filter(([name]) => name !== field));

const one = (element: unknown): unknown => ({ ground: '0', elements: [tie, element] });

/** What is malformed, the circuit, the code, and what the message must name. */
const cases: [what: string, circuit: unknown, code: string, named: string][] = [
  ['no circuit', undefined, 'shape', 'Circuit'],
  ['a circuit that is a list', [], 'shape', 'Circuit'],
  ['no elements', { ground: '0' }, 'shape', 'elements'],
  ['elements that are no list', { ground: '0', elements: {} }, 'shape', 'elements'],
  ['no ground', { elements: [tie] }, 'ground', 'ground'],
  ['an unknown ground', { ground: 'x', elements: [tie] }, 'ground', "'x'"],
  ['an empty circuit', { ground: '0', elements: [] }, 'ground', "'0'"],
  ['an element that is nothing', one(null), 'shape', 'Element 2'],
  ['an element that is text', one('R3'), 'shape', 'Element 2'],
  ['an unknown kind', one({ ...resistor, kind: 'coil' }), 'kind', "R3: kind 'coil'"],
  ['no kind', one(without(resistor, 'kind')), 'kind', 'R3: kind nothing'],
  ['a kind that is a number', one({ ...resistor, kind: 3 }), 'kind', 'R3: kind 3'],
  ['no id', one(without(resistor, 'id')), 'id', 'Resistor number 2'],
  ['an empty id', one({ ...resistor, id: '' }), 'id', 'give id'],
  ['an id that is a number', one({ ...resistor, id: 3 }), 'id', 'give id'],
  ['an id used twice', one({ ...resistor, id: 'tie' }), 'id', "id 'tie' is used twice"],
  ['no a', one(without(resistor, 'a')), 'node', 'Resistor R3: a is nothing'],
  ['no b', one(without(source, 'b')), 'node', 'Source G1: b is nothing'],
  ['a node that is a number', one({ ...motor, a: 7 }), 'node', 'Motor M1: a is 7'],
  ['a node without a name', one({ ...motor, b: '' }), 'node', 'Motor M1: b'],
  [
    'negative ohms',
    one({ ...resistor, ohms: -4 }),
    'range',
    'Resistor R3: −4 Ω. It must be above 0: give ohms.'
  ],
  ['a resistor of 0 Ω', one({ ...resistor, ohms: 0 }), 'range', 'Resistor R3: 0 Ω'],
  ['ohms too small for arithmetic', one({ ...resistor, ohms: 1e-300 }), 'range', 'from 1e-60 to'],
  ['volts too large for arithmetic', one({ ...source, volts: 1e300 }), 'range', 'give volts'],
  ['NaN ohms', one({ ...resistor, ohms: NaN }), 'number', 'Resistor R3: NaN Ω'],
  ['infinite ohms', one({ ...resistor, ohms: Infinity }), 'number', 'Resistor R3: Infinity Ω'],
  ['no ohms', one(without(resistor, 'ohms')), 'shape', 'Resistor R3: ohms is nothing'],
  ['ohms as text', one({ ...resistor, ohms: '4' }), 'shape', "Resistor R3: ohms is '4'"],
  ['a source without volts', one(without(source, 'volts')), 'shape', 'Source G1: volts'],
  ['a source of NaN volts', one({ ...source, volts: NaN }), 'number', 'Source G1: NaN V'],
  ['a source of negative ohms', one({ ...source, ohms: -1 }), 'range', 'Source G1: −1 Ω'],
  [
    'a limit of 0 A',
    one({ ...source, limit: 0 }),
    'range',
    'Source G1: 0 A. It must be above 0: give limit.'
  ],
  ['a negative limit', one({ ...source, limit: -1 }), 'range', 'give limit'],
  ['an infinite limit', one({ ...source, limit: Infinity }), 'number', 'give limit'],
  ['a limit that is null', one({ ...source, limit: null }), 'shape', 'give limit'],
  [
    'a switch neither open nor closed',
    one(without(contact, 'closed')),
    'shape',
    'Switch S1: closed'
  ],
  ['a switch closed by a text', one({ ...contact, closed: 'yes' }), 'shape', "closed is 'yes'"],
  ['a switch of negative ohms', one({ ...contact, ohms: -0.1 }), 'range', 'Switch S1: −0.1 Ω'],
  ['a diode without saturation', one({ ...diode, saturation: 0 }), 'range', 'give saturation'],
  ['a diode of negative ideality', one({ ...diode, ideality: -1 }), 'range', 'give ideality'],
  ['a diode of NaN ohms', one({ ...diode, ohms: NaN }), 'number', 'Diode D1: NaN Ω'],
  ['a motor of 0 Ω', one({ ...motor, ohms: 0 }), 'range', 'Motor M1: 0 Ω'],
  ['a motor without emf', one(without(motor, 'emf')), 'shape', 'Motor M1: emf'],
  ['a motor of infinite emf', one({ ...motor, emf: -Infinity }), 'number', 'Motor M1: −Infinity V'],
  ['a current of NaN', one({ ...current, amps: NaN }), 'number', 'Current source J1: NaN A'],
  ['a current with no way back', one({ ...current, a: 'x' }), 'way-back', 'Current source J1'],
  [
    'a current driven backwards through a diode',
    { ground: '0', elements: [diode, { ...current, a: '0', b: 'p', amps: -1 }] },
    'diode',
    'Diode D1: 1.00 A are driven through it from b to a.'
  ],
  [
    'a bare diode on a bare source',
    { ground: '0', elements: [diode, { ...source, ohms: 0 }] },
    'diode',
    'Diode D1: more than 1000000000 A through it.'
  ],
  ['an ideal source on itself', one({ ...source, b: 'p', ohms: 0 }), 'loop', 'Source G1'],
  [
    'two ideal sources in a loop',
    {
      ground: '0',
      elements: [
        { ...source, ohms: 0 },
        { ...source, id: 'G2', volts: 9, ohms: 0 }
      ]
    },
    'loop',
    'Source G2: 0 Ω'
  ],
  [
    'two switches of 0 Ω side by side',
    { ground: '0', elements: [tie, { ...contact, ohms: 0 }, { ...contact, id: 'S2', ohms: 0 }] },
    'loop',
    'Switch S2: 0 Ω'
  ]
];

describe('solve(circuit), malformed', () => {
  test.each(cases)('%s', (_, circuit, code, named) => {
    let thrown: unknown;
    try {
      solve(circuit as Circuit);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(CircuitError);
    expect(thrown).toMatchObject({ code });
    expect((thrown as CircuitError).message).toContain(named);
  });

  test('a fault has its parts as fields', () => {
    const fault = { code: 'range', where: 'Resistor R3', met: '−4 Ω', field: 'ohms' };
    expect(() => solve(one({ ...resistor, ohms: -4 }) as Circuit)).toThrow(
      expect.objectContaining({ ...fault, allowed: 'It must be above 0: give ohms.' })
    );
  });
});
