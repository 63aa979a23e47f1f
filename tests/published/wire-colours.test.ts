import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { colourCodes, colourSchemes } from '../../src/lib/tables';
import { wireColours, YardSchema } from '../../src/lib/yard';

describe('colourCodes', () => {
  test('IEC 60757: letters, of which NEM 605:2014 prints most', () => {
    expect(colourCodes).toMatchObject({
      BK: 'black',
      BN: 'brown',
      RD: 'red',
      OG: 'orange',
      YE: 'yellow',
      GN: 'green',
      BU: 'blue',
      VT: 'violet',
      GY: 'grey'
    });
  });

  test('IEC 60445:2010, clause 6.1: these colours and no others are for conductors', () => {
    const permitted =
      'black brown red orange yellow green blue violet grey white pink turquoise'.split(' ');
    expect(Object.values(colourCodes)).toEqual(permitted);
  });
});

describe('colourSchemes', () => {
  test('NEM 605:2014, table 1: common return black, + of a DC supply red, feedback brown', () => {
    const { feed, return: home, lampFeed, lampReturn } = colourSchemes['NEM 605'];
    expect({ feed, home, lampFeed, lampReturn }).toEqual({
      feed: 'RD',
      home: 'BK',
      lampFeed: 'BN',
      lampReturn: 'BK'
    });
  });

  test('common practice: feed red, common black, lamps in a colour used nowhere else', () => {
    const { feed, return: home, lampFeed, lampReturn } = colourSchemes['common practice'];
    expect([feed, home]).toEqual(['RD', 'BK']);
    expect(new Set([feed, home, lampFeed, lampReturn]).size).toBe(4);
  });
});

describe('wireColours(yard)', () => {
  const told = (yard: object) =>
    wireColours(v.parse(YardSchema, yard)).map(({ name, code, colour }) => [name, code, colour]);

  test('nothing while no colour is settled', () => {
    expect(told({})).toEqual([]);
  });

  test("a scheme's colours, those of lamps only where there are any", () => {
    const colours = { scheme: 'NEM 605' };
    expect(told({ colours })).toEqual([
      ['feed', 'RD', 'red'],
      ['return', 'BK', 'black']
    ]);
    expect(told({ colours, lamps: 'own' })).toHaveLength(4);
  });

  test("the owner's own colour goes before the scheme's, and stands without one", () => {
    expect(told({ colours: { scheme: 'NEM 605', feed: 'OG' } })[0]).toEqual([
      'feed',
      'OG',
      'orange'
    ]);
    expect(told({ colours: { return: 'GY' } })).toEqual([['return', 'GY', 'grey']]);
  });

  test('a colour that is none of the twelve is refused', () => {
    expect(v.safeParse(YardSchema, { colours: { feed: 'GD' } }).success).toBe(false);
  });
});
