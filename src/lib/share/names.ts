import { MAX_NAME } from './limits';

const LINE_ENDS_AND_CONTROLS = /[\p{Cc}\p{Zl}\p{Zp}]+/gu;
/**
 * Marks that turn or hide text: every character with Bidi_Control, the byte order mark, the soft
 * hyphen, the word joiner and the zero-width space. The joiners U+200C and U+200D stay: scripts and
 * emoji need them. Source: Unicode Standard Annex 9, table 1; PropList.txt.
 */
const TURNING_OR_HIDING =
  /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff\u00ad\u2060\u200b]/gu;
const LONE_SURROGATE = /\p{Cs}/gu;
/** Five and more marks on one letter grow over the lines above. */
const PILED_MARKS = /(\p{M}{4})\p{M}+/gu;

/** Text without what would turn, hide, break or overgrow it. */
const harmless = (text: string): string =>
  text.replace(LONE_SURROGATE, '\ufffd').replace(TURNING_OR_HIDING, '').replace(PILED_MARKS, '$1');

/** A text of several lines as it may be shown: line ends stay, all else is as in a name. */
export const shownText = (text: string): string =>
  text
    .split(/\r\n?|\n/)
    .map((line) => harmless(line.replace(LINE_ENDS_AND_CONTROLS, ' ')))
    .join('\n');

/**
 * A name as it may be shown: controls and line ends become one space, marks that turn or hide text
 * go, piles of accents are cut to four, and what is longer than `most` characters ends with an
 * ellipsis. The name itself is kept as it was typed. The result is plain text: never markup.
 */
export function shownName(name: string, most = MAX_NAME): string {
  const clean = harmless(name.slice(0, most * 8).replace(LINE_ENDS_AND_CONTROLS, ' '))
    .replace(/\s+/gu, ' ')
    .trim();
  const characters = [...clean];
  if (characters.length === 0) return 'no name';
  return characters.length <= most ? clean : `${characters.slice(0, most - 1).join('')}…`;
}

/** Names which some systems keep for devices. Source: common practice. */
const TAKEN = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** A name for a file: letters and digits of the yard's name, joined by hyphens, such as `quillby-quay.yard.json`. */
export function fileName(
  name: string,
  ending: 'yard.json' | 'walk.json' | 'html' | 'md' | 'svg' | 'png' | 'csv' | 'zip'
): string {
  const stem = shownName(name)
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
  return `${stem === '' || TAKEN.test(stem) ? `yard-${stem}`.replace(/-$/, '') : stem}.${ending}`;
}
