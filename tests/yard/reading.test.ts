import { describe, expect, test } from 'vitest';
import { levelWords, type Edit } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { reading } from './build';

/** A–D, Plover on A and on, Heron on B and off, C empty and off, 7.2 V east. */
const yard = (edits: Edit[] = [], controller: string | number = '60% east') =>
  reading(
    { deckRoads: 4 },
    { locos: { Plover: 'A', Heron: 'B' }, switches: { A: 'on' }, controller, edits }
  );

describe('read(scene).level', () => {
  test('on, with a loco: two inks face each other across it', () => {
    const { level } = yard();
    expect(level('feed rail A').joined).toBe('feed');
    expect(level('return rail A').joined).toBe('return');
    near(level('feed rail A').share, 1, { abs: 0.02 });
    near(level('return rail A').share, 0, { abs: 0.02 });
  });

  test('off, with a loco: both rails are at return level, the feed rail through the loco', () => {
    const { level, between } = yard();
    expect(level('return rail B').joined).toBe('return');
    expect(level('feed rail B')).toMatchObject({ joined: 'through', through: ['Heron'] });
    near(level('feed rail B').share, 0, { abs: 0.02 });
    near(between('feed rail B', 'return rail B'), 0, { abs: 1e-12 });
    expect(levelWords(level('feed rail B'))).toBe('at return level, only through Heron');
  });

  test('off, with a loco: the open toggle holds the whole supply', () => {
    const { between, runs } = yard();
    expect(runs.some((run) => run.id === 'feed B')).toBe(true);
    const supply = between('feed', 'return') as number;
    near(between('feed tag B', 'feed B 1'), supply, { rel: 0.01 });
    expect(supply).toBeGreaterThan(7);
  });

  test('off and empty: the feed rail is joined to nothing, and has no volts at all', () => {
    const { level, between } = yard();
    expect(level('feed rail C')).toEqual({ joined: 'nothing', share: undefined, through: [] });
    expect(between('feed rail C', 'return rail C')).toBeUndefined();
    expect(between('feed tag C', 'feed C 1')).toBeUndefined();
    expect(level('return rail C').joined).toBe('return');
    expect(levelWords(level('feed rail C'))).toBe('joined to nothing');
  });

  test('on and empty: the feed rail waits at feed level', () => {
    const { level, between } = reading({ deckRoads: 1 }, { switches: { A: 'on' }, controller: 1 });
    expect(level('feed rail A')).toEqual({ joined: 'feed', share: 1, through: [] });
    near(between('feed rail A', 'return rail A'), 12, { rel: 1e-12 });
  });

  test('return lost, with a loco: the return rail rises to feed level through the loco', () => {
    const { level, between } = yard([{ off: 'return dropper A' }]);
    expect(level('return rail A')).toMatchObject({ joined: 'through', through: ['Plover'] });
    near(level('return rail A').share, 1, { abs: 1e-9 });
    near(between('return rail A', 'return'), 7.2, { rel: 1e-9 });
    expect(levelWords(level('return rail A'))).toBe('at feed level, only through Plover');
  });

  test('return lost beyond a link: each rail there rises, through every loco that is on', () => {
    const { level } = reading(
      { deckRoads: 4 },
      {
        locos: { Plover: 'A', Heron: 'C', Curlew: 'D' },
        switches: { A: 'on', C: 'on' },
        controller: 1,
        edits: [{ off: 'loop link B-C' }]
      }
    );
    expect(level('return rail A').joined).toBe('return');
    for (const rail of ['return rail C', 'return rail D', 'feed rail D']) {
      expect(level(rail).joined).toBe('through');
      near(level(rail).share, 1, { abs: 0.02 });
    }
    expect(level('return rail D').through).toEqual(['Heron', 'Curlew']);
  });

  test('both droppers on the feed: both rails have the feed’s ink', () => {
    const { level } = yard([{ move: 'return dropper A', to: 'feed' }]);
    for (const rail of ['feed rail A', 'return rail A']) {
      expect(level(rail)).toMatchObject({ joined: 'feed', share: 1 });
    }
    expect(levelWords(level('return rail A'))).toBe('joined to the feed');
  });

  test('metal across an open toggle: the rails are as if it were on', () => {
    const metal = yard([{ metal: 'toggle B' }]);
    const on = reading(
      { deckRoads: 4 },
      { locos: { Plover: 'A', Heron: 'B' }, switches: { A: 'on', B: 'on' }, controller: 0.6 }
    );
    expect(metal.level('feed rail B').joined).toBe('feed');
    near(
      metal.between('feed rail B', 'return rail B'),
      on.between('feed rail B', 'return rail B') as number,
      { rel: 3e-3 }
    );
  });

  test('knob at centre: inks stand as they were, though nothing has volts', () => {
    const [driven, centre] = [yard(), yard([], 'centre')];
    const nodes = ['A', 'B', 'C', 'D'].flatMap((road) => [
      `feed rail ${road}`,
      `return rail ${road}`
    ]);
    for (const node of nodes) {
      expect(centre.level(node).joined).toBe(driven.level(node).joined);
    }
    near(centre.level('feed rail A').share, 1, { abs: 0.02 });
    near(centre.between('feed rail A', 'return rail A'), 0, { abs: 1e-12 });
    expect(centre.amps('Plover')).toBe(0);
  });

  test('knob west: the same inks, the volts turned round', () => {
    const [east, west] = [yard(), yard([], '60% west')];
    expect(west.level('feed rail A').joined).toBe('feed');
    near(west.level('feed rail A').share, east.level('feed rail A').share as number, { rel: 1e-9 });
    near(
      west.between('feed rail A', 'return rail A'),
      -(east.between('feed rail A', 'return rail A') as number),
      { rel: 1e-12 }
    );
  });

  test('a resistor in the feed: its rail stands part way', () => {
    const { level, between } = yard([{ resistor: 20, in: 'feed dropper A' }]);
    near(level('feed rail A').share, 0.5, { abs: 0.02 });
    near(between('feed rail A', 'return rail A'), 3.5, { abs: 0.2 });
  });

  test('a node that is not there is joined to nothing', () => {
    expect(yard().level('feed rail Z').joined).toBe('nothing');
  });
});

describe('read(scene).limiting', () => {
  test('the controller gives its limit and no more', () => {
    const all = { Plover: 'A', Heron: 'B', Curlew: 'C', Dunlin: 'D', Avocet: 'E' };
    const held = (limitAmps: number) =>
      reading(
        { deckRoads: 5, switching: 'none', supply: { limitAmps } },
        { locos: all, controller: 1 }
      );
    expect(held(10).limiting).toBe(false);
    expect(held(10).amps('controller')).toBeLessThan(-2.5);
    expect(held(1.5).limiting).toBe(true);
    near(held(1.5).amps('controller'), -1.5, { rel: 1e-12 });
    expect(held(1.5).between('feed', 'return')).toBeLessThan(6.5);
  });
});
