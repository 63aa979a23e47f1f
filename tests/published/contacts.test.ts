import { describe, expect, test } from 'vitest';
import { checks, defaultOptions, ratedParts } from '../../src/lib/checks';
import { contactAmps, contacts, silverLeastAmps } from '../../src/lib/tables';
import type { YardInput } from '../../src/lib/yard';
import { yardOf } from '../yard/build';

const run = (id: string, input: YardInput) =>
  checks.find((check) => check.id === id)?.run(yardOf(input), defaultOptions) ?? [];

/**
 * Common catalogues of switches and connectors, from memory where nothing else is said: several
 * contacts of a 9-way connector loaded together are planned for 3 A (our own judgement) and refused
 * above the 5 A of its headline; snap-action switches 3 to 5 A; miniature toggles 3 to 6 A; rotary
 * selectors carry 2 to 5 A once made; pushes 1 to 3 A.
 */
describe('what contacts may carry', () => {
  test.each([
    ['plug contact', 3, 5],
    ['micro-switch', 3, 5],
    ['toggle', 3, 6],
    ['rotary selector', 2, 5],
    ['push', 1, 3]
  ] as const)('a %s is rated at the low end of %d to %d A', (kind, least, most) => {
    expect(contactAmps[kind].amps).toBeGreaterThanOrEqual(least);
    expect(contactAmps[kind].amps).toBeLessThanOrEqual(most);
    expect(contactAmps[kind].amps).toBe(least);
    expect(contactAmps[kind].source).not.toBe('');
  });

  test('is what the ratings check holds every contact of a yard against', () => {
    const parts = ratedParts(yardOf({ deckRoads: 3, stablingRoads: 2 }));
    for (const { what, rating } of parts.filter(({ what }) => !what.includes('wire'))) {
      expect(rating, what).toBe(contactAmps[what as keyof typeof contactAmps].amps);
    }
    for (const [switching, kind] of [
      ['rotary', 'rotary selector'],
      ['pushes', 'push']
    ] as const) {
      const names = ratedParts(yardOf({ deckRoads: 2, switching })).map(({ what }) => what);
      expect(names).toContain(kind);
      expect(names).not.toContain('toggle');
    }
    const strong = { deckRoads: 3, supply: { limitAmps: 3.1, volts: 12, ohms: 0.1 } };
    const grades = (input: YardInput) => run('ratings', input).map(({ grade }) => grade);
    expect(grades(strong)).toContain('think');
    expect(new Set(grades({ deckRoads: 3, supply: { limitAmps: 2.9 } }))).toEqual(
      new Set(['fine'])
    );
  });

  test('new ones have at most 30 mΩ in a micro-switch and 20 mΩ in a toggle', () => {
    expect(contacts['micro-switch'].ohmsNewAtMost).toBeLessThanOrEqual(0.03);
    expect(contacts.toggle.ohmsNewAtMost).toBeLessThanOrEqual(0.02);
  });
});

/** Common catalogues: about 160 mA at 5 V is the least load of silver; a maker's note: 10 mA wants gold. */
describe('the least load of ordinary silver contacts', () => {
  test('is 160 mA, sixteen times the current of an LED', () => {
    expect(silverLeastAmps).toBe(0.16);
    const lamps = run('light-contacts', { deckRoads: 2, lamps: 'own' });
    expect(lamps[0]).toMatchObject({ grade: 'think', where: ['lamp pole A', 'lamp pole B'] });
    expect(lamps[0]?.cure).toContain('gold-plated or crossbar');
    expect(lamps[0]?.cure).toContain('never for the track');
  });
});
