import { describe, expect, test } from 'vitest';
import { checks, defaultOptions, ratedParts, roadVolts } from '../../src/lib/checks';
import { contacts, fuseFor, wireAmps, wireOhmsPerMetre } from '../../src/lib/tables';
import { admit, locoNamed, YardSchema } from '../../src/lib/yard';
import { near } from '../circuit/near';

const yardOf = (input: object) => admit('yard', YardSchema, input);
const run = (id: string, input: object) =>
  checks.find((check) => check.id === id)?.run(yardOf(input), defaultOptions) ?? [];
const demo = { deckRoads: 5, stablingRoads: 4 };

describe('running', () => {
  test('gives the volts of one road as the series sum of its parts', () => {
    const yard = yardOf({ deckRoads: 1, plug: false });
    const { main, dropper } = yard.wires;
    const run2 = (wire: typeof main) => wireOhmsPerMetre(wire.size) * wire.lengthM;
    const path = 0.5 + 2 * run2(main) + 2 * run2(dropper) + contacts.toggle.ohms;
    const loco = locoNamed('Avocet');
    const { stalled, running, lost } = roadVolts(yard, 'A', loco);
    near(stalled, (12 * loco.ohms) / (loco.ohms + path), { rel: 1e-9 });
    near(running, 12 - loco.lightAmps * path, { rel: 1e-9 });
    near(lost, loco.lightAmps * (path - 0.5), { rel: 1e-6 });
  });

  test('proposes the change of least copper that brings the far road within a tenth', () => {
    const thin = { ...demo, wires: { dropper: { size: '7/0.2', lengthM: 25 } } };
    const [worst] = run('running', thin);
    expect(worst?.grade).toBe('think');
    expect(worst?.cure).toBe('Use 16/0.2 wire instead of 7/0.2 for the droppers (550.0 m).');
    const mended = { ...demo, wires: { dropper: { size: '16/0.2', lengthM: 25 } } };
    expect(run('running', mended)[0]?.grade).toBe('fine');
  });
});

describe('ratings', () => {
  test('lets the return contacts share the sum of all roads, and the limit in a short', () => {
    const parts = ratedParts(yardOf({ ...demo, plug: { returnContacts: 2 } }));
    const returns = parts.filter(({ id }) => id.startsWith('plug return'));
    expect(returns).toHaveLength(2);
    for (const { short } of returns) near(short, 0.75, { rel: 1e-6 });
    const main = parts.find(({ id }) => id === 'return wire');
    near(main?.short ?? 0, 1.5, { rel: 1e-6 });
  });

  test('asks for more where a contact sees more than it may carry', () => {
    const strong = { ...demo, supply: { volts: 12, ohms: 0.5, limitAmps: 5 } };
    const plug = run('ratings', strong).find(({ what }) => what.includes('plug contact'));
    expect(plug?.grade).not.toBe('fine');
    expect(run('ratings', demo).every(({ grade }) => grade === 'fine')).toBe(true);
  });
});

describe('protection', () => {
  test('proposes a fuse between the load and what the wire may carry: IB ≤ In ≤ Iz', () => {
    const thin = { ...demo, wires: { dropper: { size: '7/0.2', lengthM: 1 } } };
    const dropper = run('protection', thin).find(({ where }) => where.includes('droppers'));
    expect(dropper).toMatchObject({ grade: 'must fix' });
    expect(dropper?.cure).toContain('1 A');
    expect(fuseFor(0.9, wireAmps('7/0.2'))).toBe(1);
    expect(fuseFor(2, wireAmps('7/0.2'))).toBeUndefined();
  });
});

describe('off is off', () => {
  test('finds the running road fed straight, and that a rotary lets one switched road be live', () => {
    expect(run('off-is-off', demo)[0]).toMatchObject({ grade: 'think', where: ['Q'] });
    const rotary = run('off-is-off', { deckRoads: 5, switching: 'rotary' });
    expect(rotary.map(({ what }) => what)).toContain('No two roads can be live at once.');
    const bridging = { deckRoads: 5, switching: 'rotary', rotary: 'make before break' };
    expect(run('off-is-off', bridging).map(({ what }) => what)).toContain(
      '2 roads can be live at once: A and B.'
    );
  });
});

describe('lamps and room', () => {
  test('give the lamp its E12 resistor, and find a road that is too short', () => {
    expect(run('lamps', { ...demo, lamps: 'own' })[0]?.what).toContain('1000 Ω');
    expect(run('lamps', demo)).toEqual([]);
    const [stabling] = run('room', { ...demo, stablingLengthMm: 200 });
    expect(stabling).toMatchObject({
      grade: 'must fix',
      where: ['1', '2', '3', '4'],
      amount: '250 mm on 200 mm, 50 mm too much'
    });
  });
});
