import { describe, expect, test } from 'vitest';
import { CircuitError, prepare, solve } from '../../src/lib/circuit';
import type { Circuit, Element, Solution } from '../../src/lib/circuit';
import { G, R, S, grounded } from './build';
import { network } from './networks';
import { drawFrom, pick } from './random-numbers';
import { yard } from './yards';

/** Everything that a solution says, to the last bit. */
function everything(s: Solution, { elements }: Circuit): unknown {
  return {
    volts: elements.map(({ a, b }) => [s.volts(a), s.volts(b), s.between(a, b)]),
    amps: elements.map(({ id }) => s.amps(id)),
    floating: s.floating,
    limiting: s.limiting
  };
}

/** Flips random switches one by one; each time the prepared circuit must be a fresh one's twin. */
function flips(circuit: Circuit, count: number, seed: number): void {
  const draw = drawFrom(seed);
  const prepared = prepare(circuit);
  const elements: Element[] = [...circuit.elements];
  const switches = elements.flatMap((e, n) => (e.kind === 'switch' ? [n] : []));
  if (switches.length === 0) return;
  for (let flip = 0; flip < count; flip++) {
    const n = pick(draw, switches);
    const element = elements[n];
    if (element?.kind !== 'switch') continue;
    const closed = !element.closed;
    elements[n] = { ...element, closed };
    prepared.set(element.id, { closed });
    const now = { ground: circuit.ground, elements };
    expect(everything(prepared.solve(), now)).toEqual(everything(solve(now), now));
  }
}

describe('prepare(circuit)', { timeout: 60_000 }, () => {
  test('flips of yards give what a fresh solve gives, bit for bit', () => {
    for (let seed = 1; seed <= 12; seed++) {
      flips(
        yard({ seed, deck: 1 + seed, stabling: seed % 5, lamps: true, faults: seed % 3 }),
        25,
        seed
      );
    }
    flips(yard({ seed: 99, deck: 40, stabling: 20, return: 'ring', lamps: true }), 20, 99);
  });

  test('flips of random networks give what a fresh solve gives, bit for bit', () => {
    const kinds = ['resistor', 'source', 'switch', 'switch', 'motor'] as const;
    for (let seed = 1; seed <= 150; seed++) {
      flips(network({ seed, nodes: 3 + (seed % 7), elements: 5 + (seed % 15), kinds }), 12, seed);
    }
  });

  test('takes new volts, ohms, emf, amps and limits', () => {
    const circuit: Circuit = {
      ground: '0',
      elements: [
        { kind: 'source', id: 'G', a: 'p', b: '0', volts: 12, ohms: 0, limit: 2 },
        { kind: 'motor', id: 'M', a: 'p', b: '0', ohms: 10, emf: 2 },
        { kind: 'current', id: 'J', a: '0', b: 'p', amps: 0 }
      ]
    };
    const prepared = prepare(circuit);
    expect(prepared.solve().amps('M')).toBe(1);
    prepared.set('G', { volts: -8 });
    prepared.set('J', { amps: 0.25 });
    expect(prepared.solve().amps('M')).toBe(-1);
    expect(prepared.solve().amps('G')).toBeCloseTo(1.25, 12);
    prepared.set('M', { ohms: 1, emf: 0 });
    expect(prepared.solve().limiting).toEqual(['G']);
    expect(prepared.solve().amps('M')).toBeCloseTo(-1.75, 12);
    prepared.set('G', { ohms: 4, limit: undefined });
    expect(prepared.solve().limiting).toEqual([]);
    expect(prepared.solve().amps('M')).toBeCloseTo((-8 + 4 * 0.25) / 5, 12);
  });

  test('takes new values on a dead end, where nothing flows', () => {
    const prepared = prepare(
      grounded(G('G', ['p', '0'], 12, 1), R('R', ['p', '0'], 11), G('end', ['x', 'p'], 3, 1))
    );
    expect(prepared.solve().volts('x')).toBeCloseTo(14, 12);
    prepared.set('end', { volts: -2 });
    expect(prepared.solve().volts('x')).toBeCloseTo(9, 12);
  });

  test('takes a switch of 0 Ω in and out', () => {
    const prepared = prepare(
      grounded(G('G', ['p', '0'], 12, 1), S('S', ['p', 'q'], 0, false), R('R', ['q', '0'], 5))
    );
    expect(prepared.solve().volts('q')).toBe(0);
    prepared.set('S', { closed: true });
    expect(prepared.solve().volts('q')).toBeCloseTo(10, 12);
    expect(prepared.solve().amps('S')).toBeCloseTo(2, 12);
  });

  test('works on after a scene that had no solution', () => {
    const prepared = prepare(
      grounded(S('S', ['p', '0'], 1), R('R', ['0', 'r'], 1), {
        kind: 'current',
        id: 'J',
        a: '0',
        b: 'p',
        amps: 1
      })
    );
    expect(prepared.solve().volts('p')).toBe(1);
    prepared.set('S', { closed: false });
    expect(() => prepared.solve()).toThrow('Current source J: its current has no way back.');
    prepared.set('S', { closed: true });
    expect(prepared.solve().volts('p')).toBe(1);
  });

  test('refuses a change that makes no sense, and names it', () => {
    const prepared = prepare(grounded(G('G', ['p', '0'], 12), R('R', ['p', '0'], 5)));
    expect(() => prepared.set('R', { ohms: -4 })).toThrow(
      'Resistor R: −4 Ω. It must be above 0: give ohms.'
    );
    expect(() => prepared.set('R', { closed: true })).toThrow("Resistor R: no field 'closed'.");
    expect(() => prepared.set('R9', { ohms: 4 })).toThrow(CircuitError);
    expect(prepared.solve().amps('R')).toBeCloseTo(2.4, 12);
  });
});
