import { describe, expect, test } from 'vitest';
import { apply, circuitOf, liveRoads, read, roads, type Run } from '../../src/lib/yard';
import { solve } from '../../src/lib/circuit';
import { near } from '../circuit/near';
import { sceneOf, yardOf, type SceneInput } from './build';

/** Ground rules of a moving-deck yard. Source: common practice, no published one. */
const quay = yardOf({ deckRoads: 5, stablingRoads: 4 });
const toggles = ['A', 'B', 'C', 'D', 'E', 'R', '1', '2', '3', '4'];
const fixed = ['Q', '1', '2', '3', '4'];
const deck = ['A', 'B', 'C', 'D', 'E', 'R'];

/** Toggles on by the bits of a number. */
const pattern = (bits: number) =>
  Object.fromEntries(toggles.map((road, index) => [road, ((bits >> index) & 1) === 1]));
const live = (input: SceneInput) => liveRoads(quay, sceneOf(quay, input));

/** Every pattern of ten toggles takes too long for each rule: every seventh, and both ends. */
const patterns = [...Array.from({ length: 147 }, (_, index) => index * 7), 1023];

describe('ground rules, on Quillby Quay', { timeout: 60_000 }, () => {
  test('1: toggle off, its road is dead whatever the others do; on, it is live', () => {
    for (const bits of patterns) {
      const switches = pattern(bits);
      const found = live({ deck: '2', switches });
      const dead = deck.filter((road) => found.has(road) !== switches[road]);
      expect(dead).toEqual([]);
      expect(found.has('2')).toBe(switches[2]);
    }
  });

  test('1: unless wheels stand across a joint: then a live road feeds a dead one', () => {
    const at = (atMm: number) =>
      live({ deck: 'C', locos: { Plover: { road: 'Q', atMm } } }).has('C');
    expect([2384, 2386, 2399].map(at)).toEqual([false, true, true]);
  });

  test('3: plug out, no deck road is live, and nothing on the fixed side changes', () => {
    const locos = { Plover: '2', Heron: 'Q' };
    for (const bits of patterns) {
      const input = { deck: '2', switches: pattern(bits), locos, controller: 0.6 };
      const [inside, out] = (['in', 'out'] as const).map((plug) => live({ ...input, plug }));
      const side = (found?: ReadonlySet<string>) => fixed.filter((road) => found?.has(road));
      expect(side(out)).toEqual(side(inside));
      expect(deck.filter((road) => out?.has(road))).toEqual([]);
    }
  });

  test('3: plug out, both rails of a deck road are out; volts and amps on the fixed side stay', () => {
    const locos = { Plover: '2', Heron: 'Q' };
    const readings = (['in', 'out'] as const).map((plug) =>
      read(
        quay,
        sceneOf(quay, { deck: '2', switches: pattern(1023), locos, controller: 0.6, plug })
      )
    );
    for (const road of ['2', 'Q']) {
      const [inside, out] = readings.map(({ between }) =>
        between(`feed rail ${road}`, `return rail ${road}`)
      );
      near(out, inside ?? NaN, { rel: 1e-12 });
    }
    for (const road of deck) {
      for (const rail of ['feed', 'return'] as const) {
        const joined = readings.map(({ level }) => level(`${rail} rail ${road}`).joined);
        expect(joined).toEqual([rail, 'nothing']);
      }
    }
    const [inside, out] = readings.map(({ amps }) => [amps('Plover'), amps('Heron')]);
    for (const index of [0, 1]) near(out?.[index], inside?.[index] ?? NaN, { rel: 1e-12 });
  });

  test('4: interlock open, its stabling road is dead, whatever its toggle and the others', () => {
    const places = [
      { deck: '2' as const, closed: '2' },
      { deck: '2' as const, pin: 'out' as const, closed: '' },
      { deck: 'C' as const, closed: '' },
      { deck: -150, closed: '' }
    ];
    for (const { closed, ...place } of places) {
      for (const bits of patterns) {
        const found = live({ ...place, switches: pattern(bits) });
        const stabling = fixed.filter((road) => road !== 'Q' && found.has(road));
        expect(stabling.filter((road) => road !== closed)).toEqual([]);
      }
    }
  });

  test('5: interlock, toggle, rail: open, it leaves toggle and wire dead; the other order does not', () => {
    const scene = sceneOf(quay, {
      deck: '2',
      pin: 'out',
      switches: { 2: true },
      locos: { Plover: '2' },
      controller: 0.6
    });
    const runs = apply(quay, scene);
    const feed = runs.find(({ id }) => id === 'feed 2');
    expect(feed?.parts.map(({ id }) => id)).toEqual([
      'pin contact 2',
      'toggle 2',
      'feed dropper 2'
    ]);
    const turned = ({ parts: [pin, toggle, wire], ...run }: Run): Run => ({
      ...run,
      parts: [toggle, pin, wire].flatMap((part) => part ?? [])
    });
    const other = runs.map((run) => (run.id === 'feed 2' ? turned(run) : run));
    const [volts, otherVolts] = [runs, other].map((each) => {
      const solution = solve(circuitOf(quay, scene, each));
      expect(solution.amps('Plover')).toBe(0);
      return solution.between('feed 2 1', 'return') ?? 0;
    });
    expect(volts).toBe(0);
    near(otherVolts, 7.2, { rel: 1e-9 });
  });

  test.each(['chain', 'ring', 'star'] as const)(
    '6: a %s of returns joins one rail of every road, and no switch stands in it',
    (shape) => {
      const yard = yardOf({ deckRoads: 5, stablingRoads: 4, return: shape });
      const { runs, level } = read(yard, sceneOf(yard, { controller: 0.6, deck: -150 }));
      for (const road of roads(yard)) expect(level(`return rail ${road}`).joined).toBe('return');
      const kinds = runs.filter(({ job }) => job === 'return').flatMap(({ parts }) => parts);
      expect(new Set(kinds.map(({ kind }) => kind))).toEqual(new Set(['wire', 'plug']));
      expect(kinds.filter(({ kind }) => kind === 'plug')).toHaveLength(2);
    }
  );
});
