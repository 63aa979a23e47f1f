import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groups, solve } from '../../src/lib/circuit';
import {
  circuitOf,
  lampRoads,
  roads,
  selectorStands,
  switchedRoads,
  type Yard,
  type YardInput
} from '../../src/lib/yard';
import { near } from '../circuit/near';
import { sceneOf, yardOf, type Moment } from './build';
import { anyKnob } from './random';

/** Yards with every kind of switching, lamps and controllers, in any state of the hand. */
const anyElectrics: fc.Arbitrary<Moment> = fc
  .record({
    deckRoads: fc.integer({ min: 2, max: 6 }),
    stablingRoads: fc.integer({ min: 0, max: 2 }),
    switching: fc.constantFrom('toggles' as const, 'rotary' as const, 'pushes' as const),
    rotary: fc.constantFrom('break before make' as const, 'make before break' as const),
    lamps: fc.constantFrom('none' as const, 'own' as const, 'track' as const),
    shares: fc.constantFrom('no second' as const, 'nothing' as const, 'supply' as const),
    controller: anyKnob,
    second: anyKnob,
    bits: fc.nat({ max: 1023 }),
    plug: fc.constantFrom('in' as const, 'out' as const)
  })
  .map(({ lamps, shares, controller, second, bits, plug, ...rest }) => {
    const input: YardInput = {
      ...rest,
      lamps: rest.switching === 'pushes' ? 'none' : lamps,
      ...(shares === 'no second' ? {} : { second: { roads: ['B'], shares } })
    };
    const yard = yardOf(input);
    const stands = selectorStands(yard);
    const made = switchedRoads(yard).filter((_, index) => (bits >> index) & 1);
    const hand =
      yard.switching === 'rotary'
        ? { selector: stands[bits % stands.length] as string }
        : { switches: Object.fromEntries(made.map((road) => [road, true])) };
    const knobs = { controller, ...(yard.second ? { second } : {}) };
    const locos = { Plover: 'A', Heron: 'B' };
    return { yard, scene: sceneOf(yard, { ...hand, ...knobs, locos, plug }) };
  });

const sources = ({ lamps, second }: Yard): readonly string[] => [
  ...(second?.shares === 'supply' ? ['supply'] : []),
  'controller',
  ...(second ? ['controller 2'] : []),
  ...(lamps === 'own' ? ['lamp supply'] : [])
];

describe('circuitOf(yard, scene), any electrics', () => {
  const everywhere = (claim: (at: Moment) => void) =>
    fc.assert(fc.property(anyElectrics, claim), { numRuns: 150 });

  test('names each element once; a switch a switched road, a lamp and a resistor a lamp road', () => {
    everywhere(({ yard, scene }) => {
      const { elements } = circuitOf(yard, scene);
      const ids = elements.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      const found = elements.filter(({ kind }) => kind === 'source').map(({ id }) => id);
      expect(new Set(found)).toEqual(new Set(sources(yard)));
      const named = (pattern: RegExp) => ids.filter((id) => pattern.test(id)).length;
      expect(named(/^(toggle|selector|push) /)).toBe(switchedRoads(yard).length);
      expect(named(/^lamp resistor /)).toBe(lampRoads(yard).length);
      for (const road of lampRoads(yard)) expect(ids).toContain(`lamp ${road}`);
      expect(elements.flatMap(({ a, b }) => [a, b]).join()).not.toMatch(/behind/);
    });
  });

  test('lamps of their own share no node with the rest, and are an island', () => {
    everywhere(({ yard, scene }) => {
      const circuit = circuitOf(yard, scene);
      const own = yard.lamps === 'own';
      const whole = groups(circuit, () => true);
      expect(whole.all.length).toBe(own ? 2 : 1);
      expect(solve(circuit).floating.includes('lamp +')).toBe(own);
    });
  });

  test('what the feeds give comes home: the sum of all currents into the return is nothing', () => {
    everywhere(({ yard, scene }) => {
      const circuit = circuitOf(yard, scene);
      const solution = solve(circuit);
      const into = circuit.elements
        .filter(({ a, b }) => a === 'return' || b === 'return')
        .map(({ id, b }) => (b === 'return' ? solution.amps(id) : -solution.amps(id)));
      near(
        into.reduce((sum, each) => sum + each, 0),
        0,
        { abs: 1e-8 }
      );
      expect(roads(yard).length).toBeGreaterThan(1);
    });
  });
});
