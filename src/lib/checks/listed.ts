import { joinWords } from '../yard';

/** Names told one by one before the rest is counted. */
const TOLD = 4;

/** Names in a row: "A, B and C", or "A, B, C and 5 more". */
export const listed = (names: readonly string[]): string =>
  names.length <= TOLD
    ? joinWords(names, 'and')
    : `${names.slice(0, TOLD - 1).join(', ')} and ${names.length - TOLD + 1} more`;
