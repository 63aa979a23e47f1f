import * as v from 'valibot';

/** The words of a text, as a reader counts them. */
export const countWords = (text: string): number =>
  text.split(/\s+/).filter((word) => /\w/.test(word)).length;

/** A text of at most `most` words. */
export const words = (most: number) =>
  v.pipe(
    v.string(`a text of at most ${most} words`),
    v.check((text) => countWords(text) <= most, `a text of at most ${most} words`)
  );
