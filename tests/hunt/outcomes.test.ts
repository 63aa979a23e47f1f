import { expect, test } from 'vitest';
import { outcomes, suspectsOf, testsOf, type Suspect, type Test } from '../../src/lib/hunt';
import {
  BUZZ_OHMS,
  faultsOf,
  litBy,
  liveRoads,
  locoNamed,
  read,
  startingVolts
} from '../../src/lib/yard';
import type { Edit, Scene, Yard } from '../../src/lib/yard';
import { yardOf } from '../yard/build';
import { seeded } from './drive';

const pairIn = ({ id, moment }: Test): [string, string] =>
  moment.pairs.find((pair) => id.includes(` ${pair.join(' to ')},`)) as [string, string];

const faulty = (test: Test, suspect: Suspect, more: Partial<Scene>): Scene => ({
  ...test.moment.scene,
  faults: suspect.fault ? [suspect.fault] : [],
  ...more
});

const held = (yard: Yard, test: Test, suspect: Suspect, edit: Edit) =>
  read(yard, faulty(test, suspect, { edits: [edit] }));

/** What the whole yard shows with the instrument or the loco in it, by plain `read`. */
const plainly: Readonly<Record<string, (yard: Yard, test: Test, suspect: Suspect) => string>> = {
  testLamp: (yard, test, suspect) =>
    litBy(held(yard, test, suspect, { testLamp: pairIn(test) }).volts('test lamp') ?? 0),
  volts(yard, test, suspect) {
    const volts = held(yard, test, suspect, { volts: pairIn(test) }).volts('meter volts') ?? 0;
    if (Math.abs(volts) < 1) return 'none';
    if (volts < 0) return 'reversed';
    return volts < 0.75 * yard.supply.volts ? 'some' : 'full';
  },
  ohms(yard, test, suspect) {
    const { ohms = Infinity } = held(yard, test, suspect, { ohms: pairIn(test) });
    return ohms < BUZZ_OHMS ? 'buzz' : ohms < 10e3 ? 'ohms' : 'open';
  },
  across: (yard, test, suspect) =>
    read(yard, faulty(test, suspect, {})).limiting ? 'limit' : 'no',
  run(yard, test, suspect) {
    const [, road = ''] = /^run (\S+),/.exec(test.id) ?? [];
    if (read(yard, faulty(test, suspect, {})).limiting) return 'limit';
    const at = { road, atMm: 200, faces: 'east', speed: 0, fallen: false } as const;
    const volts = read(yard, faulty(test, suspect, { locos: { Plover: at } })).volts('Plover') ?? 0;
    if (Math.abs(volts) < startingVolts(locoNamed('Plover'))) return 'still';
    if (volts < 0) return 'wrong way';
    return volts < 0.85 * yard.supply.volts ? 'slow' : 'runs';
  }
};

test.each([
  ['toggles, lamps of their own', yardOf({ deckRoads: 2, stablingRoads: 1, lamps: 'own' })],
  ['a ring, lamps on the track', yardOf({ deckRoads: 3, lamps: 'track', return: 'ring' })],
  ['a rotary', yardOf({ deckRoads: 3, stablingRoads: 1, switching: 'rotary' })],
  ['two controllers', yardOf({ deckRoads: 3, second: { roads: ['B'] } })],
  [
    'a road cut in two',
    yardOf({ deckRoads: 2, stablingRoads: 1, cuts: [{ road: 'A', rail: 'feed', atMm: 600 }] })
  ]
])('outcomes(yard): the quick outcome is that of the whole yard: %s', (_, yard) => {
  const chance = seeded(7);
  const pick = <T>(all: readonly T[]): T => all[Math.floor(chance() * all.length)] as T;
  const tests = testsOf(yard).filter(({ kind }) => kind === 'plug out' || kind in plainly);
  let compared = 0;
  for (let count = 0; count < 150; count++) {
    const [one, suspect] = [pick(tests), pick(suspectsOf(yard))];
    const [[shares = []] = []] = outcomes(yard, [one], [suspect]);
    const met = plainly[one.kind === 'plug out' ? 'ohms' : one.kind]?.(yard, one, suspect);
    const index = one.outcomes.findIndex(({ id }) => id === met);
    expect(
      shares[index] ?? 0,
      `${one.id}: ${suspect.name}: ${met}, not ${shares.join()}`
    ).toBeGreaterThan(0);
    compared += 1;
  }
  expect(compared).toBe(150);
});

test('outcomes(yard): metal laid by any of a hundred faults counts in every moment of a large yard', () => {
  const yard = yardOf({ deckRoads: 24, stablingRoads: 12, lamps: 'own' });
  const laid = suspectsOf(yard).filter(({ name }) => /^(bridge|touching):/.test(name));
  const named = (id: string) => testsOf(yard).find((each) => each.id === id) as Test;
  const [all = []] = outcomes(yard, [named('round stray own')], laid);
  const last = laid.findIndex(({ name }) => name === 'touching: 12 and R');
  const alone = named('stray, own R at 12');
  const plain = liveRoads(yard, faulty(alone, laid[last] as Suspect, {}));
  expect(alone.moment.others.filter((road) => plain.has(road))).toEqual(['12']);
  expect(all[last]?.[0]).toBe(0);
});

test('suspectsOf(yard): every fault of the catalogue once, and that nothing is wrong', () => {
  const yard = yardOf({ deckRoads: 5, stablingRoads: 4, lamps: 'own' });
  const all = suspectsOf(yard);
  expect(all.length).toBe(faultsOf(yard).length + 1);
  expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
  expect(all.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 9);
  const prior = (name: string) => all.find((each) => each.name === name)?.prior ?? 0;
  expect(prior('wireOff: feed dropper A')).toBeGreaterThan(prior('welded: toggle A'));
  expect(prior('highOhms: feed dropper A')).toBeGreaterThan(prior('welded: toggle A'));
});
