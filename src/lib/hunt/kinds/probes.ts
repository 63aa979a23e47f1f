import { pointName } from '../../yard';
import type { Pair } from '../moment';

/** "feed tag C and return rail C". */
export const pairWords = (pair: Pair): string => pair.map(pointName).join(' and ');
