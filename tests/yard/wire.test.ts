import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groups } from '../../src/lib/circuit';
import { contacts, wireOhmsPerMetre } from '../../src/lib/tables';
import { circuitOf, deckRoads, places, roads, wire, type YardInput } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { sceneOf, yardOf } from './build';
import { anyYard } from './random';

const counts = [...Array.from({ length: 12 }, (_, index) => index + 1), 26, 40];
const sizes = counts.flatMap((count) => [
  { count, shape: 'chain' as const },
  { count, shape: 'ring' as const },
  { count, shape: 'star' as const }
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

  test('names up to forty storage roads, without Q and R; release and stabling roads after them', () => {
    const names = roads(yardOf({ deckRoads: 40, stablingRoads: 20 }));
    expect(names).toHaveLength(1 + 40 + 1 + 20);
    expect(new Set(names).size).toBe(names.length);
    expect(names.slice(0, 4)).toEqual(['Q', 'A', 'B', 'C']);
    expect(names.slice(16, 28).join(' ')).toBe('P S T U V W X Y Z AA AB AC');
    expect(names.slice(40, 44)).toEqual(['AP', 'R', '1', '2']);
  });

  test('leads a moving deck’s return home through the plug, and the fixed roads’ past it', () => {
    const yard = yardOf({ deckRoads: 2, stablingRoads: 2, plug: { returnContacts: 3 } });
    const ways = wire(yard).flatMap(({ job, road, from, to, parts }) =>
      job === 'return' && road === undefined ? [[parts[0]?.id, from, to]] : []
    );
    expect(ways).toEqual([
      ['loop link A-B', 'return tag B', 'return tag A'],
      ['loop link B-R', 'return tag R', 'return tag B'],
      ['deck return', 'return tag A', 'deck joint'],
      ['plug return 1', 'deck joint', 'return joint'],
      ['plug return 2', 'deck joint', 'return joint'],
      ['plug return 3', 'deck joint', 'return joint'],
      ['loop link Q', 'return tag Q', 'return joint'],
      ['loop link 1-2', 'return tag 2', 'return tag 1'],
      ['loop link 1', 'return tag 1', 'return joint'],
      ['return wire', 'return joint', 'return']
    ]);
  });

  test.each<[string, YardInput, Record<string, string[]>]>([
    [
      'toggle and plug stand in a deck road’s feed, pin contact and toggle in a stabling road’s',
      { deckRoads: 1, stablingRoads: 1 },
      {
        Q: ['feed dropper Q'],
        A: ['toggle A', 'plug A', 'feed dropper A'],
        R: ['toggle R', 'plug R', 'feed dropper R'],
        1: ['pin contact 1', 'toggle 1', 'feed dropper 1']
      }
    ],
    [
      'an interlocked running road has both',
      { deckRoads: 1, runningRoad: 'interlocked' },
      {
        Q: ['pin contact Q', 'toggle Q', 'feed dropper Q'],
        A: ['toggle A', 'plug A', 'feed dropper A']
      }
    ],
    [
      'without interlock, plug and toggles only droppers are left',
      { deckRoads: 1, stablingRoads: 1, interlocked: false, plug: false, switching: 'none' },
      {
        Q: ['feed dropper Q'],
        A: ['feed dropper A'],
        R: ['feed dropper R'],
        1: ['feed dropper 1']
      }
    ]
  ])('%s', (_, input, expected) => {
    const feeds = wire(yardOf(input)).filter(({ job, road }) => job === 'feed' && road);
    expect(
      Object.fromEntries(feeds.map(({ road, parts }) => [road, parts.map(({ id }) => id)]))
    ).toEqual(expected);
  });

  test('leaves out the toggles where there are none', () => {
    const all = places(wire(yardOf({ deckRoads: 4, switching: 'none' })));
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
    const home = size.shape === 'star' ? 1 + size.count : 1 + hops + closing;
    expect(ids).toHaveLength(1 + hops + home + 3 * size.count);
    const whole = groups({ ground: 'return', elements }, (each) => each.kind !== 'source');
    expect(whole.all).toHaveLength(2);
    for (const road of deckRoads(yard)) {
      expect(whole.joined('feed', `feed rail ${road}`)).toBe(true);
      expect(whole.joined('return', `return rail ${road}`)).toBe(true);
    }
  });

  test('cuts a chain beyond one broken link, nothing of a ring, one road of a star', () => {
    const reached = (shape: 'chain' | 'ring' | 'star') => {
      const yard = yardOf({ deckRoads: 4, return: shape });
      const off = shape === 'star' ? 'return wire B' : 'loop link B-C';
      const circuit = circuitOf(yard, sceneOf(yard, { edits: [{ off }] }));
      const joined = groups(circuit, (each) => each.kind === 'switch' && each.closed);
      return deckRoads(yard).filter((road) => joined.joined('return', `return rail ${road}`));
    };
    expect(reached('chain')).toEqual(['A', 'B']);
    expect(reached('ring')).toEqual(['A', 'B', 'C', 'D']);
    expect(reached('star')).toEqual(['A', 'C', 'D']);
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
        const joint = yard.plug !== false || yard.return === 'star' ? ['return joint'] : [];
        const deck = yard.plug === false ? [] : ['deck joint'];
        expect([...ends].sort()).toEqual(['feed', 'return', ...joint, ...deck, ...expected].sort());
        expect(runs.every((run) => run.parts.length > 0)).toBe(true);
      }),
      { numRuns: 60, seed: 1 }
    );
  });
});
