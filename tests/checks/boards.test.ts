import { describe, expect, test } from 'vitest';
import { checks, defaultOptions, type Finding, type Sight } from '../../src/lib/checks';
import { driveTo, start } from '../../src/lib/motion';
import { liveRoads, read, vehicles, type YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

const run = (id: string, input: YardInput): readonly Finding[] =>
  checks.find((check) => check.id === id)?.run(yardOf(input), defaultOptions) ?? [];
const sightOf = (finding: Finding | undefined): Sight =>
  finding?.board ?? expect.fail(`no board: ${finding?.what}`);

const yards: Readonly<Record<string, YardInput>> = {
  'as built': { deckRoads: 2, stablingRoads: 2, lamps: 'own' },
  improved: { deckRoads: 2, stablingRoads: 2, runningRoad: 'interlocked', lamps: 'track' },
  'one road': { deckRoads: 1 },
  rotary: { deckRoads: 3, stablingRoads: 1, switching: 'rotary', rotary: 'make before break' },
  'pushes, ring': { deckRoads: 2, stablingRoads: 1, switching: 'pushes', return: 'ring' },
  'no switches, star': { deckRoads: 2, runningRoad: 'direct', switching: 'none', return: 'star' },
  'second controller': { deckRoads: 3, stablingRoads: 1, second: { roads: ['B'] } },
  'no plug, both ends': { deckRoads: 2, runningRoad: 'direct', runningEnds: 'both', plug: false },
  'cut running road': {
    deckRoads: 2,
    stablingRoads: 1,
    runningRoad: 'interlocked',
    cuts: [{ road: 'Q', atMm: 1400 }]
  },
  'own heavy locos': {
    deckRoads: 2,
    stablingRoads: 1,
    scale: 'N',
    locos: { Old: { shape: 'tender', ohms: 4, lightAmps: 0.9, lengthMm: 380 } },
    supply: { volts: 18, limitAmps: 5 },
    wires: { dropper: { size: '7/0.2', lengthM: 6 } }
  }
};

/** Slips of the pen that a finding is not to have. */
const slips = [
  /\b1 (roads|switches|places|coaches|faults)\b/,
  /undefined|NaN|Infinity/,
  /\.\./,
  / {2}/
];

test.each(Object.entries(yards))(
  'every finding of a yard is whole, in clean sentences, with a board: %s',
  (_, input) => {
    for (const check of checks) {
      for (const finding of check.run(yardOf(input), defaultOptions)) {
        const { what, amount, why, cure, source } = finding;
        for (const words of [what, why, cure]) expect(words).toMatch(/^['A-Z0-9].*\.$/s);
        expect(amount).not.toMatch(/\.$/);
        expect(source.length).toBeGreaterThan(5);
        for (const slip of slips) expect(`${what} ${amount} ${why} ${cure}`).not.toMatch(slip);
        const { yard, scene } = sightOf(finding);
        expect(() => read(yard, scene)).not.toThrow();
      }
    }
  },
  30_000
);

describe('the board of a finding shows it', () => {
  test('Proved: the pin home, all on, locos before the open ends; nothing falls in', () => {
    for (const name of ['improved', 'one road']) {
      const proved = run('gap-proof', yards[name] as YardInput).find(
        ({ grade }) => grade === 'fine'
      );
      const { yard, scene } = sightOf(proved);
      expect(Math.abs(scene.controller)).toBe(1);
      if (name !== 'one road') expect(scene.pin).toBe('home');
      expect(Object.keys(scene.locos).length).toBeGreaterThan(0);
      const { events, scene: after } = driveTo(yard, start(scene), 4);
      expect(events.filter(({ kind }) => kind === 'gap')).toEqual([]);
      expect(Object.values(after.locos).every(({ fallen }) => !fallen)).toBe(true);
    }
  });

  test('off is off: all others are on, and the loco on the road that is off takes no current', () => {
    const off = run('off-is-off', yards['as built'] as YardInput).find(({ what }) =>
      what.startsWith('Off is off')
    );
    const { yard, scene } = sightOf(off);
    expect(scene.switches).toEqual({ B: true, R: true, 1: true, 2: true });
    const [name = ''] = Object.keys(scene.locos);
    expect(scene.locos[name]?.road).toBe('A');
    expect(read(yard, scene).amps(name)).toBe(0);
  });

  test('live at once: exactly the roads it names', () => {
    for (const input of Object.values(yards)) {
      const together = run('off-is-off', input).find(({ what }) => /live at once/.test(what));
      const { yard, scene } = sightOf(together);
      expect([...liveRoads(yard, scene)].sort()).toEqual([...(together?.where ?? [])].sort());
    }
  });

  test('protection and ratings: the short brings the controller to its limit', () => {
    const [finding] = run('protection', yards['as built'] as YardInput);
    const { yard, scene } = sightOf(finding);
    expect(read(yard, scene).limiting).toBe(true);
  });

  test('room: one coach too many stands across the end of the deck', () => {
    const train = run('room', yards['as built'] as YardInput).find(({ what }) =>
      /coach/.test(what)
    );
    const { scene } = sightOf(train);
    const west = Math.min(...Object.values(vehicles(scene)).map(({ atMm }) => atMm));
    expect(Object.keys(scene.stock)).toHaveLength(4);
    expect(west).toBeLessThan(240 / 2);
  });

  test('light contacts: the current it names; below 12 V: the volts it names', () => {
    const [light] = run('light-contacts', yards['as built'] as YardInput);
    const silver = sightOf(light);
    expect(read(silver.yard, silver.scene).amps('lamp pole A')).toBeCloseTo(0.01, 3);
    const [, low] = run('running', yards['as built'] as YardInput);
    const { yard, scene } = sightOf(low);
    const road = Object.values(scene.locos)[0]?.road ?? '';
    const volts = read(yard, scene).between(`feed rail ${road}`, `return rail ${road}`);
    expect(low?.amount.startsWith(`${volts?.toFixed(2)} V`)).toBe(true);
  });

  test('an occupied road: played on, the loco runs into what stands there', () => {
    const [occupied] = run('workings', yards['as built'] as YardInput);
    expect(occupied?.where).toEqual(['A', '1']);
    const { yard, scene } = sightOf(occupied);
    const { events } = driveTo(yard, start(scene), 3);
    expect(events.some(({ kind, other }) => kind === 'bump' && other === 'wagon')).toBe(true);
  });
});
