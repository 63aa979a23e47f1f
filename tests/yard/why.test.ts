import { describe, expect, test } from 'vitest';
import type { Edit } from '../../src/lib/yard';
import { reading } from './build';

const why = (
  edits: Edit[],
  { on = true, road = 'A', shape = 'chain' as 'chain' | 'ring' } = {}
): ReturnType<ReturnType<typeof reading>['why']> =>
  reading(
    { deckRoads: 3, return: shape },
    { locos: { Plover: 'A', Heron: 'C' }, switches: { A: on, C: on }, controller: 1, edits }
  ).why(road);

describe('read(scene).why(road)', () => {
  test('a whole loop: out by the feed and home by the return, part by part', () => {
    const found = why([]);
    expect(found).toMatchObject({ state: 'loop', breaks: [] });
    expect(found.feed.path.map((step) => step.id)).toEqual([
      'feed wire',
      'toggle A',
      'feed dropper A'
    ]);
    expect(found.return.path.map((step) => step.id)).toEqual(['return dropper A', 'return wire']);
  });

  test('a road farther on goes past every tag before it', () => {
    expect(why([], { road: 'C' }).return.path.map((step) => step.id)).toEqual([
      'return dropper C',
      'loop link B-C',
      'loop link A-B',
      'return wire'
    ]);
  });

  test('a ring takes the shorter way home', () => {
    const ring = { road: 'C', shape: 'ring' } as const;
    expect(why([], ring).return.path.map((step) => step.id)).toEqual([
      'return dropper C',
      'closing link'
    ]);
    expect(why([{ off: 'closing link' }], ring).state).toBe('loop');
  });

  test.each<[string, Edit[], boolean, string[]]>([
    ['an open toggle', [], false, ['toggle A']],
    ['a lost return dropper', [{ off: 'return dropper A' }], true, ['return dropper A']],
    ['a lost feed wire', [{ off: 'feed wire' }], true, ['feed wire']],
    [
      'open both ways',
      [{ off: 'return wire' }, { off: 'feed dropper A' }],
      false,
      ['toggle A', 'feed dropper A', 'return wire']
    ],
    ['a toggle moved home', [{ toggle: 'A', in: 'return dropper A' }], false, ['toggle A']],
    ['a toggle moved into a link', [{ toggle: 'A', in: 'return wire' }], false, ['toggle A']]
  ])('open by %s: names the breaks, the feed’s first', (_, edits, on, breaks) => {
    expect(why(edits, { on })).toMatchObject({ state: 'open', breaks });
  });

  test.each<[string, Edit]>([
    ['the feed', { move: 'return dropper A', to: 'feed' }],
    ['the return', { move: 'feed dropper A', to: 'return' }]
  ])('both droppers on %s: one ink', (_, edit) => {
    expect(why([edit])).toMatchObject({ state: 'one ink', breaks: [] });
  });

  test('metal on an open toggle closes the loop past it', () => {
    const found = why([{ metal: 'toggle A' }], { on: false });
    expect(found.state).toBe('loop');
    expect(found.feed.path.map((step) => step.id)).toContain('metal on toggle A');
  });

  test('a loco is no wire: a road is not joined by way of another’s loco', () => {
    const lost = why([{ off: 'loop link A-B' }], { road: 'C' });
    expect(lost).toMatchObject({ state: 'open', breaks: ['loop link A-B'] });
  });

  test('droppers swapped: the loop is whole, the other way round', () => {
    const swapped: Edit[] = [
      { move: 'feed dropper A', to: 'return' },
      { move: 'return dropper A', to: 'feed' }
    ];
    expect(why(swapped).state).toBe('loop');
    expect(why(swapped).feed.path.map((step) => step.id)).toEqual([
      'feed wire',
      'return dropper A'
    ]);
    expect(why([...swapped, { off: 'return wire' }])).toMatchObject({
      state: 'open',
      breaks: ['return wire']
    });
    expect(why(swapped, { on: false })).toMatchObject({ state: 'open', breaks: ['toggle A'] });
  });
});
