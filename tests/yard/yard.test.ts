import { describe, expect, test } from 'vitest';
import { admit, BorderError, YardSchema, type Yard, type YardInput } from '../../src/lib/yard';
import { thrown, yardOf } from './build';

describe('admit(YardSchema)', () => {
  test('makes a complete yard of one number', () => {
    expect(yardOf({ deckRoads: 4 })).toEqual({
      version: 1,
      scale: 'OO/HO',
      names: {},
      name: 'Quillby Quay',
      deckRoads: 4,
      releaseRoad: false,
      facesStabling: 'D',
      stablingRoads: 0,
      interlocked: true,
      runningRoad: 'none',
      runningEnds: 'west',
      switching: 'toggles',
      rotary: 'break before make',
      lamps: 'none',
      lampSupply: { volts: 12 },
      return: 'chain',
      plug: false,
      roadLengthMm: 1200,
      runningLengthMm: 2400,
      stablingLengthMm: 300,
      centresMm: 60,
      releaseCentresMm: 75,
      stablingFromMm: 35,
      toleranceMm: 0.4,
      openingMm: 30,
      cuts: [],
      endStops: [],
      locos: {},
      colours: { scheme: 'none' },
      supply: { volts: 12, ohms: 0.5, limitAmps: 1.5 },
      wires: {
        main: { size: '24/0.2', lengthM: 2 },
        link: { size: '24/0.2', lengthM: 0.1 },
        dropper: { size: '16/0.2', lengthM: 1.5 },
        lamp: { size: '7/0.2', lengthM: 0.5 }
      }
    });
  });

  test.each<[what: string, input: YardInput, parts: Partial<Yard>]>([
    [
      'stabling roads',
      { deckRoads: 5, stablingRoads: 4 },
      { releaseRoad: true, runningRoad: 'direct', plug: { returnContacts: 2 } }
    ],
    [
      'a running road',
      { runningRoad: true },
      { releaseRoad: false, runningRoad: 'direct', plug: { returnContacts: 2 } }
    ],
    ['no running road, in so many words', { runningRoad: false }, { plug: false }],
    ['stabling roads, wired for good', { stablingRoads: 1, plug: false }, { plug: false }]
  ])('adds the parts of a moving deck to a yard with %s', (_, input, parts) => {
    expect(yardOf(input)).toMatchObject(parts);
  });

  test.each<YardInput>([
    { deckRoads: 12, return: 'ring', supply: { volts: 24 } },
    { deckRoads: 40, stablingRoads: 20, runningRoad: 'interlocked', return: 'star' }
  ])('leaves what it admits unchanged when it meets it again: %j', (input) => {
    const yard = yardOf(input);
    expect(admit('yard', YardSchema, JSON.parse(JSON.stringify(yard)))).toEqual(yard);
  });

  test.each<
    [what: string, input: unknown, ...where: [path: string[], met: string, allowed: string]]
  >([
    ['41 roads', { deckRoads: 41 }, ['deckRoads'], '41', '1 to 40 deck roads'],
    ['no road', { deckRoads: 0 }, ['deckRoads'], '0', '1 to 40 deck roads'],
    ['half a road', { deckRoads: 2.5 }, ['deckRoads'], '2.5', '1 to 40 deck roads'],
    ['roads as text', { deckRoads: '4' }, ['deckRoads'], '"4"', '1 to 40 deck roads'],
    ['21 stabling roads', { stablingRoads: 21 }, ['stablingRoads'], '21', '0 to 20 stabling roads'],
    [
      'a running road of no kind',
      { runningRoad: 'straight' },
      ['runningRoad'],
      '"straight"',
      'none, direct or interlocked; true is direct'
    ],
    ['more than 24 V', { supply: { volts: 24.5 } }, ['supply', 'volts'], '24.5', '1 to 24 V'],
    ['ohms below 0', { supply: { ohms: -1 } }, ['supply', 'ohms'], '-1', '0 to 100 Ω'],
    ['no limit', { supply: { limitAmps: 0 } }, ['supply', 'limitAmps'], '0', '0.05 to 10 A'],
    ['a tree', { return: 'tree' }, ['return'], '"tree"', 'chain, ring or star'],
    ['a short road', { roadLengthMm: 200 }, ['roadLengthMm'], '200', '300 to 3000 mm'],
    [
      'a slider',
      { switching: 'slider' },
      ['switching'],
      '"slider"',
      'toggles, rotary, pushes or none'
    ],
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
      'yard › deckRoads: met 0, allowed: 1 to 40 deck roads.\n' +
        'yard › supply › volts: met 230, allowed: 1 to 24 V.'
    );
  });
});
