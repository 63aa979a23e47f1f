import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groups } from '../../src/lib/circuit';
import { contacts, wireOhmsPerMetre } from '../../src/lib/tables';
import { circuitOf, deckRoads, places, roads, wire } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { sceneOf, yardOf } from './build';
import { anyYard } from './random';

const counts = Array.from({ length: 12 }, (_, index) => index + 1);
const sizes = counts.flatMap((count) => [
  { count, shape: 'chain' as const },
  { count, shape: 'ring' as const }
]);

describe('wire(yard)', () => {
  test('names what a modeller can point at', () => {
    expect(places(wire(yardOf({ deckRoads: 3, return: 'ring' })))).toEqual([
      'feed wire',
      'feed link A-B',
      'feed link B-C',
      'loop link A-B',
      'loop link B-C',
      'return wire',
      'closing link',
      ...['A', 'B', 'C'].flatMap((road) => [
        `toggle ${road}`,
        `feed dropper ${road}`,
        `return dropper ${road}`
      ])
    ]);
  });

  test('puts the running road first, without a toggle', () => {
    const yard = yardOf({ deckRoads: 2, runningRoad: true });
    expect(roads(yard)).toEqual(['Q', 'A', 'B']);
    expect(deckRoads(yard)).toEqual(['A', 'B']);
    expect(places(wire(yard))).toContain('feed link Q-A');
    expect(places(wire(yard))).not.toContain('toggle Q');
  });

  test('leaves out the toggles where there are none', () => {
    const all = places(wire(yardOf({ deckRoads: 4, toggles: false })));
    expect(all.filter((id) => id.startsWith('toggle'))).toEqual([]);
    expect(all.filter((id) => id.startsWith('feed dropper'))).toHaveLength(4);
  });

  test.each(sizes)('$count roads in a $shape: one element a part, every node reached', (size) => {
    const yard = yardOf({ deckRoads: size.count, return: size.shape });
    const { elements } = circuitOf(yard, sceneOf(yard));
    const ids = places(wire(yard));
    expect(new Set(ids).size).toBe(ids.length);
    expect(elements.map((each) => each.id)).toEqual(['controller', ...ids]);
    const hops = size.count - 1;
    const closing = size.shape === 'ring' && size.count > 1 ? 1 : 0;
    expect(ids).toHaveLength(2 + 2 * hops + closing + 3 * size.count);
    const whole = groups({ ground: 'return', elements }, (each) => each.kind !== 'source');
    expect(whole.all).toHaveLength(2);
    for (const road of deckRoads(yard)) {
      expect(whole.joined('feed', `feed rail ${road}`)).toBe(true);
      expect(whole.joined('return', `return rail ${road}`)).toBe(true);
    }
  });

  test('cuts a chain beyond one broken link, and nothing of a ring', () => {
    const reached = (shape: 'chain' | 'ring') => {
      const yard = yardOf({ deckRoads: 4, return: shape });
      const circuit = circuitOf(yard, sceneOf(yard, { edits: [{ off: 'loop link B-C' }] }));
      const joined = groups(circuit, (each) => each.kind === 'switch' && each.closed);
      return deckRoads(yard).filter((road) => joined.joined('return', `return rail ${road}`));
    };
    expect(reached('chain')).toEqual(['A', 'B']);
    expect(reached('ring')).toEqual(['A', 'B', 'C', 'D']);
  });

  test('gives each wire the ohms of its size and length, each toggle those of the table', () => {
    const yard = yardOf({
      deckRoads: 2,
      return: 'ring',
      wires: {
        main: { size: 'AWG 22', lengthM: 3 },
        link: { size: '7/0.2', lengthM: 0.2 },
        dropper: { size: '0.5 mm²', lengthM: 1 }
      }
    });
    const parts = new Map(wire(yard).flatMap((run) => run.parts.map((part) => [part.id, part])));
    const ohms = (id: string) => parts.get(id)?.ohms;
    near(ohms('feed wire'), 3 * wireOhmsPerMetre('AWG 22'), { rel: 1e-12 });
    near(ohms('return wire'), 3 * wireOhmsPerMetre('AWG 22'), { rel: 1e-12 });
    near(ohms('closing link'), 3 * wireOhmsPerMetre('AWG 22'), { rel: 1e-12 });
    near(ohms('loop link A-B'), 0.2 * wireOhmsPerMetre('7/0.2'), { rel: 1e-12 });
    near(ohms('return dropper B'), wireOhmsPerMetre('0.5 mm²'), { rel: 1e-12 });
    expect(parts.get('toggle A')).toEqual({
      id: 'toggle A',
      kind: 'toggle',
      ohms: contacts.toggle.ohms,
      closed: false
    });
  });

  test('joins runs end to end: what one reaches, another leaves, but rails and terminals', () => {
    fc.assert(
      fc.property(anyYard, (yard) => {
        const runs = wire(yard);
        const ends = new Set(runs.flatMap((run) => [run.from, run.to]));
        const expected = roads(yard).flatMap((road) =>
          ['feed tag', 'feed rail', 'return rail', 'return tag'].map((kind) => `${kind} ${road}`)
        );
        expect([...ends].sort()).toEqual(['feed', 'return', ...expected].sort());
        expect(runs.every((run) => run.parts.length > 0)).toBe(true);
      }),
      { numRuns: 60, seed: 1 }
    );
  });
});
