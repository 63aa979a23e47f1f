import { describe, expect, test } from 'vitest';
import { admit, BorderError, YardSchema } from '../../src/lib/yard';
import { thrown, yardOf } from './build';

describe('admit(YardSchema)', () => {
  test('makes a complete yard of one number', () => {
    expect(yardOf({ deckRoads: 4 })).toEqual({
      version: 1,
      name: 'Quillby Quay',
      deckRoads: 4,
      runningRoad: false,
      toggles: true,
      return: 'chain',
      roadLengthMm: 1200,
      centresMm: 60,
      supply: { volts: 12, ohms: 0.5, limitAmps: 1.5 },
      wires: {
        main: { size: '24/0.2', lengthM: 2 },
        link: { size: '24/0.2', lengthM: 0.1 },
        dropper: { size: '16/0.2', lengthM: 1.5 }
      }
    });
  });

  test('leaves what it admits unchanged when it meets it again', () => {
    const yard = yardOf({ deckRoads: 12, return: 'ring', supply: { volts: 24 } });
    expect(admit('yard', YardSchema, JSON.parse(JSON.stringify(yard)))).toEqual(yard);
  });

  test.each<
    [what: string, input: unknown, ...where: [path: string[], met: string, allowed: string]]
  >([
    ['13 roads', { deckRoads: 13 }, ['deckRoads'], '13', '1 to 12 deck roads'],
    ['no road', { deckRoads: 0 }, ['deckRoads'], '0', '1 to 12 deck roads'],
    ['half a road', { deckRoads: 2.5 }, ['deckRoads'], '2.5', 'a whole number of roads'],
    ['roads as text', { deckRoads: '4' }, ['deckRoads'], '"4"', 'a whole number of roads'],
    ['more than 24 V', { supply: { volts: 24.5 } }, ['supply', 'volts'], '24.5', '1 to 24 V'],
    ['ohms below 0', { supply: { ohms: -1 } }, ['supply', 'ohms'], '-1', '0 to 100 Ω'],
    ['no limit', { supply: { limitAmps: 0 } }, ['supply', 'limitAmps'], '0', '0.05 to 10 A'],
    ['a star', { return: 'star' }, ['return'], '"star"', 'chain or ring'],
    ['a short road', { roadLengthMm: 200 }, ['roadLengthMm'], '200', '300 to 3000 mm'],
    ['toggles as a word', { toggles: 'yes' }, ['toggles'], '"yes"', 'true or false'],
    [
      'a wire of no length',
      { wires: { link: { lengthM: 0 } } },
      ['wires', 'link', 'lengthM'],
      '0',
      '0.01 to 50 m'
    ],
    ['another version', { version: 2 }, ['version'], '2', '1'],
    [
      'an unknown size of wire',
      { wires: { link: { size: 'AWG 99' } } },
      ['wires', 'link', 'size'],
      '"AWG 99"',
      "a wire size such as '24/0.2' (strands/mm), '0.5 mm²' or 'AWG 22'"
    ],
    [
      'an unknown key',
      { deckRoad: 4 },
      ['deckRoad'],
      "the unknown key 'deckRoad'",
      'the keys of this form only'
    ],
    [
      'an unknown key within',
      { supply: { amps: 2 } },
      ['supply', 'amps'],
      "the unknown key 'amps'",
      'the keys of this form only'
    ]
  ])('refuses %s', (_, input, ...[path, met, allowed]) => {
    const error = thrown(() => admit('yard', YardSchema, input));
    expect(error).toBeInstanceOf(BorderError);
    expect(error).toMatchObject({
      code: 'does-not-fit',
      what: 'yard',
      findings: [{ path, met, allowed }],
      message: `${['yard', ...path].join(' › ')}: met ${met}, allowed: ${allowed}.`
    });
  });

  test('admits 24 V, the most that is extra-low voltage here', () => {
    expect(yardOf({ supply: { volts: 24 } }).supply.volts).toBe(24);
  });

  test('tells a number that is none by its name', () => {
    expect(() => yardOf({ supply: { volts: NaN } })).toThrow(
      'yard › supply › volts: met NaN, allowed: 1 to 24 V.'
    );
  });

  test('names every place that does not fit, one a line', () => {
    expect(() => yardOf({ deckRoads: 0, supply: { volts: 230 } })).toThrow(
      'yard › deckRoads: met 0, allowed: 1 to 12 deck roads.\n' +
        'yard › supply › volts: met 230, allowed: 1 to 24 V.'
    );
  });
});
