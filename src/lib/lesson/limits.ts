import * as v from 'valibot';
import { countWords } from '../yard';

/** A text of at most `most` words. */
export const words = (most: number) =>
  v.pipe(
    v.string(`a text of at most ${most} words`),
    v.check((text) => countWords(text) <= most, `a text of at most ${most} words`)
  );
