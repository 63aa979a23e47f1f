import { flesch } from 'flesch';
import { syllable } from 'syllable';
import { countWords } from '../../src/lib/yard';

/** How a text reads. */
export interface Measure {
  readonly words: number;
  readonly sentences: number;
  /** Words in a sentence, on the mean and in the longest one. */
  readonly mean: number;
  readonly longest: number;
  /** Reading ease after Flesch: 65 and more is plain English. */
  readonly ease: number;
}

/** Prose without its Markdown marks. */
export const plain = (markdown: string): string =>
  markdown
    .replace(/\[([^\]]+)\]\([^)]*\)/g, '$1')
    .replace(/[*_`]/g, '')
    .replace(/^(#+|[-*]|\d+\.)\s+/gm, '');

/** The sentences of a text; a paragraph ends one too. */
export const sentences = (text: string): readonly string[] =>
  plain(text)
    .split(/\n\s*\n|(?<=[.!?]["”’]?)\s+/)
    .map((each) => each.trim())
    .filter((each) => countWords(each) > 0);

/** Measures a text that is given in pieces, each of whole sentences. */
export function measure(pieces: readonly string[]): Measure {
  const all = pieces.flatMap(sentences);
  const lengths = all.map(countWords);
  const words = lengths.reduce((sum, each) => sum + each, 0);
  const syllables = all.reduce((sum, each) => sum + syllable(each), 0);
  return {
    words,
    sentences: all.length,
    mean: words / all.length,
    longest: Math.max(...lengths),
    ease: flesch({ sentence: all.length, word: words, syllable: syllables })
  };
}
