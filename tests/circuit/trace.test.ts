import { describe, expect, test } from 'vitest';
import { groups, trace } from '../../src/lib/circuit';
import type { Circuit, Element } from '../../src/lib/circuit';

const wire = (id: string, a: string, b: string): Element => ({
  kind: 'resistor',
  id,
  a,
  b,
  ohms: 0.1
});
const toggle = (id: string, [a, b]: [string, string], closed: boolean): Element => ({
  kind: 'switch',
  id,
  a,
  b,
  closed,
  ohms: 0.02
});

/** Two roads: A with one open toggle, B with one closed; their rails meet through B's loco. */
const yard: Circuit = {
  ground: 'return',
  elements: [
    { kind: 'source', id: 'G1', a: 'feed', b: 'return', volts: 12, ohms: 0.5 },
    toggle('S A', ['feed', 'a1'], false),
    wire('W A', 'a1', 'rail A'),
    toggle('S B', ['feed', 'b1'], true),
    wire('W B', 'b1', 'rail B'),
    { kind: 'motor', id: 'M B', a: 'rail B', b: 'return', ohms: 20, emf: 0 },
    { kind: 'current', id: 'J', a: 'far', b: 'return', amps: 0 },
    toggle('S1', ['x', 'y'], false),
    toggle('S2', ['y', 'z'], false),
    toggle('S3', ['x', 'z'], false)
  ]
};

const noLoads = { avoid: (e: Element) => e.kind === 'motor' || e.kind === 'source' };

describe('trace(circuit, from, to)', () => {
  test('walks the shortest conducting path element by element', () => {
    expect(trace(yard, 'feed', 'rail B', noLoads)).toEqual({
      joined: true,
      path: [
        { id: 'S B', from: 'feed', to: 'b1' },
        { id: 'W B', from: 'b1', to: 'rail B' }
      ]
    });
  });

  test('names the fewest open switches that keep nodes apart', () => {
    const found = trace(yard, 'feed', 'rail A');
    expect(found).toEqual({
      joined: false,
      path: [
        { id: 'S A', from: 'feed', to: 'a1' },
        { id: 'W A', from: 'a1', to: 'rail A' }
      ],
      breaks: ['S A']
    });
    expect(trace(yard, 'x', 'z')).toMatchObject({ breaks: ['S3'] });
  });

  test('avoids what it is told to avoid', () => {
    expect(trace(yard, 'rail B', 'return').joined).toBe(true);
    expect(trace(yard, 'rail B', 'return', noLoads)).toEqual({
      joined: false,
      path: [],
      breaks: []
    });
  });

  test('prefers one open switch on a long way round to two on a short one', () => {
    const chain = Array.from({ length: 9 }, (_, n) =>
      wire(`W${String(n)}`, `n${String(n)}`, `n${String(n + 1)}`)
    );
    const circuit: Circuit = {
      ground: 'n0',
      elements: [
        ...chain,
        toggle('long', ['n9', 'end'], false),
        toggle('short 1', ['n0', 'mid'], false),
        toggle('short 2', ['mid', 'end'], false)
      ]
    };
    expect(trace(circuit, 'n0', 'end')).toMatchObject({ joined: false, breaks: ['long'] });
  });

  test('finds no way across a current source, and says so with an empty path', () => {
    expect(trace(yard, 'far', 'return')).toEqual({ joined: false, path: [], breaks: [] });
    expect(trace(yard, 'far', 'far')).toEqual({ joined: true, path: [] });
    expect(() => trace(yard, 'feed', 'nowhere')).toThrow("no node 'nowhere'");
  });
});

describe('groups(circuit, joins)', () => {
  test('parts the nodes by what joins them', () => {
    const conductors = groups(
      yard,
      (e) => e.kind === 'resistor' || (e.kind === 'switch' && e.closed)
    );
    expect(conductors.joined('feed', 'rail B')).toBe(true);
    expect(conductors.joined('feed', 'return')).toBe(false);
    expect(conductors.of('feed')).toEqual(['feed', 'b1', 'rail B']);
    expect(conductors.all.flat()).toHaveLength(10);
    expect(() => conductors.of('nowhere')).toThrow("no node 'nowhere'");
  });
});
