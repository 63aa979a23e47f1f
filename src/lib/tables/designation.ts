/**
 * Class letters of reference designations. Source: IEC 81346-2:2009, Table 1 (read in two teaching
 * tables): S manual switch, B measuring element and position switch, X terminal and plug,
 * M motor, R resistor, G supply. P, what presents a state to people (meters, lamps): from memory.
 */
export const classLetters = {
  supply: 'G',
  'manual switch': 'S',
  'position switch': 'B',
  plug: 'X',
  motor: 'M',
  resistor: 'R',
  indicator: 'P'
} as const;

/** What a class letter is given to. */
export type DesignationClass = keyof typeof classLetters;
