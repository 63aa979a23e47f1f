export type Level = 1 | 2 | 3;

/** How hard a practice hunt is, in words. */
export const levels: Readonly<Record<Level, string>> = {
  1: 'one common fault',
  2: 'any one fault',
  3: 'two at once'
};
