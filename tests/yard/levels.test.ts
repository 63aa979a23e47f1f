import { describe, expect, test } from 'vitest';
import { solve, type Circuit, type Element } from '../../src/lib/circuit';
import { circuitOf, levelWords } from '../../src/lib/yard';
import { levels } from '../../src/lib/yard/levels';
import { near } from '../circuit/near';
import { moment } from './build';

/** The circuit of a yard with more elements in it than hands can put there today. */
function withMore(...more: Element[]): Circuit {
  const { yard, scene } = moment(
    { deckRoads: 2 },
    { locos: { Plover: 'A' }, switches: { A: 'on' }, controller: 1 }
  );
  const circuit = circuitOf(yard, scene);
  return { ...circuit, elements: [...circuit.elements, ...more] };
}

const spanner: Element = {
  kind: 'resistor',
  id: 'spanner',
  a: 'feed rail A',
  b: 'return rail A',
  ohms: 0.05
};

describe('levels(circuit)', () => {
  test('a spanner across live rails: feed meets return, and the controller limits', () => {
    const circuit = withMore(spanner);
    const solution = solve(circuit);
    const all = levels(circuit, solution);
    for (const node of ['feed', 'return', 'feed rail A', 'return rail A', 'return rail B']) {
      expect(all.get(node)?.joined).toBe('both');
    }
    expect(levelWords(all.get('feed rail A') ?? fail())).toBe('feed and return meet: a short');
    expect(solution.limiting).toEqual(['controller']);
    near(solution.amps('controller'), -1.5, { rel: 1e-12 });
    expect(Math.abs(solution.amps('Plover'))).toBeLessThan(0.01);
  });

  test('a spanner across dead rails shorts nothing', () => {
    const circuit = withMore({ ...spanner, a: 'feed rail B', b: 'return rail B' });
    const solution = solve(circuit);
    const all = levels(circuit, solution);
    expect(all.get('feed rail A')?.joined).toBe('feed');
    expect(all.get('feed rail B')?.joined).toBe('return');
    near(all.get('feed rail B')?.share, 0, { abs: 0.01 });
    expect(solution.limiting).toEqual([]);
  });

  test('a lamp is a load: what hangs on it alone is at its level through it', () => {
    const lamp: Element = {
      kind: 'diode',
      id: 'lamp',
      a: 'feed',
      b: 'far side',
      saturation: 1e-18,
      ideality: 2,
      ohms: 0
    };
    const circuit = withMore(lamp);
    const all = levels(circuit, solve(circuit));
    expect(all.get('far side')).toMatchObject({ joined: 'through', through: ['lamp'] });
  });

  test('an island of its own has no share of the controller’s volts; the lamps’ is told by name', () => {
    const ends = { a: 'lamp +', b: 'lamp -' };
    const circuit = withMore(
      { kind: 'source', id: 'lamp supply', ...ends, volts: 12, ohms: 0.1 },
      { kind: 'resistor', id: 'lamp', ...ends, ohms: 1000 }
    );
    const all = levels(circuit, solve(circuit));
    expect(all.get('lamp +')).toEqual({ joined: 'lamp supply', share: undefined, through: [] });
    expect(all.get('lamp -')?.joined).toBe('lamp supply');
  });
});

function fail(): never {
  throw new Error('no level');
}
