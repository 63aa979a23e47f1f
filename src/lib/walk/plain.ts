import { proseOf } from './prose';

/** A step's words without the signs of their Markdown. */
export const plainText = (text: string): string =>
  proseOf(text)
    .flatMap((block) => (block.kind === 'list' ? block.items : [block.spans]))
    .map((spans) => spans.map((span) => span.text).join(''))
    .join(' ');

/** A text as a pattern that means itself. */
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** A pattern for a list of names: "A", "A and B", "A, B or C". */
export function listOf(names: readonly string[]): string {
  const longest = names.toSorted((a, b) => b.length - a.length).map(escaped);
  const name = `(?:${longest.join('|')})(?![\\w-])`;
  return `${name}(?:(?:,\\s*|,?\\s+(?:and|or)\\s+)${name})*`;
}

/** The names that stand in a list. */
export const namesIn = (list: string, names: readonly string[]): readonly string[] =>
  names.filter((name) => new RegExp(`(?<![\\w-])${escaped(name)}(?![\\w-])`).test(list));
