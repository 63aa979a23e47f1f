/**
 * Letter codes of the colours which conductors may have. Source: colours IEC 60445:2010, clause 6.1;
 * codes IEC 60757, most of them printed in NEM 605:2014 as well; WH, PK and TQ from memory.
 */
export const colourCodes = {
  BK: 'black',
  BN: 'brown',
  RD: 'red',
  OG: 'orange',
  YE: 'yellow',
  GN: 'green',
  BU: 'blue',
  VT: 'violet',
  GY: 'grey',
  WH: 'white',
  PK: 'pink',
  TQ: 'turquoise'
} as const;

/** A colour by its letters. */
export type ColourCode = keyof typeof colourCodes;

/** The wires of a yard that have a colour each. */
export type ColouredWire = 'feed' | 'return' | 'lampFeed' | 'lampReturn';

/**
 * Colours by what a wire does. `NEM 605`: NEM 605:2014, table 1: common return black, + of a DC supply
 * red, feedback brown; that the track's feed is its supply and a panel lamp its feedback is our
 * reading. The other: red feed and black return are common practice; no world standard exists.
 */
export const colourSchemes = {
  'common practice': { feed: 'RD', return: 'BK', lampFeed: 'YE', lampReturn: 'WH' },
  'NEM 605': { feed: 'RD', return: 'BK', lampFeed: 'BN', lampReturn: 'BK' }
} as const satisfies Readonly<Record<string, Readonly<Record<ColouredWire, ColourCode>>>>;
