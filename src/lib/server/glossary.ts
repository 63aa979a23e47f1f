import text from '../../../content/glossary.md?raw';

/** A word with what other regions say and what it means. */
export interface Term {
  readonly word: string;
  readonly heard: string;
  readonly meaning: string;
  /** Address of its row on the page. */
  readonly anchor: string;
}

/** The glossary's tables, one for each heading, read from its Markdown. */
export const glossary: readonly { readonly heading: string; readonly terms: readonly Term[] }[] =
  text
    .split(/^## /m)
    .slice(1)
    .map((section) => ({ heading: section.split('\n')[0] as string, terms: rows(section) }));

function rows(section: string): readonly Term[] {
  return section
    .split('\n')
    .filter((line) => line.startsWith('|') && !/^\|[\s|:-]+$/.test(line))
    .slice(1)
    .map((line) => {
      const [word = '', heard = '', meaning = ''] = line
        .slice(1, -1)
        .split('|')
        .map((cell) => cell.trim());
      return { word, heard, meaning, anchor: word.replaceAll(' ', '-') };
    });
}
