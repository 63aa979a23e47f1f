import { describe, expect, test } from 'vitest';
import { drops, solve, trace, why } from '../../src/lib/circuit';
import type { Circuit } from '../../src/lib/circuit';
import { G, M, R, S, grounded } from './build';
import { near } from './near';
import { yard } from './yards';

/** Road B's toggle is open, but its feed rail is joined to road A's return by loco B and a bar. */
const sneak: Circuit = grounded(
  G('controller', ['feed', '0'], 12, 0.5),
  S('toggle A', ['feed', 'a'], 0.02),
  R('wire A', ['a', 'rail A'], 0.48),
  M('loco A', ['rail A', '0'], 23),
  S('toggle B', ['feed', 'b'], 0.02, false),
  M('loco B', ['b', 'back B'], 20),
  R('home B', ['back B', '0'], 0.1)
);

const sum = (list: readonly { volts: number | undefined }[]): number =>
  list.reduce((total, { volts }) => total + (volts ?? NaN), 0);

describe('why(circuit, solution, point)', { timeout: 30_000 }, () => {
  test('says what each element on the way drops, and they add up', () => {
    const answer = why(sneak, solve(sneak), 'rail A');
    expect(answer.drops.map(({ id }) => id)).toEqual(['wire A', 'toggle A', 'controller']);
    near(answer.volts, 11.5, { rel: 1e-12 });
    near(sum(answer.drops), 11.5, { rel: 1e-12 });
    near(answer.drops[0]?.volts, -0.24, { rel: 1e-12 });
    near(answer.drops[2]?.volts, 11.75, { rel: 1e-12 });
    expect(answer.through).toEqual([]);
    expect(answer.breaks).toEqual([]);
  });

  test('names the loads when there is no other way: a sneak path', () => {
    const answer = why(sneak, solve(sneak), 'b');
    expect(answer.through).toEqual(['loco B']);
    expect(answer.volts).toBe(0);
    expect(answer.drops.map(({ id, load }) => [id, load])).toEqual([
      ['loco B', true],
      ['home B', false]
    ]);
  });

  test('names the open switch that keeps a floating point apart', () => {
    const answer = why(sneak, solve(sneak), 'b', { avoid: (e) => e.id === 'loco B' });
    expect(answer.breaks).toEqual(['toggle B']);
    expect(answer.drops[0]).toMatchObject({ id: 'toggle B' });
  });

  test('adds up at every point of whole yards', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const circuit = yard({ seed, deck: 6, stabling: 3, lamps: true, faults: 2 });
      const solution = solve(circuit);
      for (const { a } of circuit.elements) {
        const answer = why(circuit, solution, a);
        if (answer.volts === undefined) {
          expect(answer.breaks.length > 0 || answer.drops.length === 0).toBe(true);
        } else near(sum(answer.drops), answer.volts, { abs: 1e-11 });
      }
    }
  });
});

describe('drops(circuit, solution, path)', () => {
  test('leaves the drop across a break between islands undefined', () => {
    const circuit = grounded(
      G('controller', ['feed', '0'], 12, 0.5),
      S('toggle', ['feed', 'a'], 0.02, false),
      R('wire', ['a', 'rail'], 0.5)
    );
    const { path } = trace(circuit, 'feed', 'rail');
    expect(drops(circuit, solve(circuit), path).map(({ volts }) => volts)).toEqual([undefined, 0]);
  });
});
