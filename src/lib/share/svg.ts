import { asciiText, type YardFile } from './file';
import { MAX_TEXT } from './limits';
import { readText } from './text';
import { UnreadableError } from './wrong';

const ID = 'ohmyard';
/** Everything before the root's content: declaration, comments, document type, the root's own tag. */
const ROOT =
  /^\ufeff?(?:\s|<\?[^>]*>|<!--[^]*?-->|<!DOCTYPE[^>[]*(?:\[[^\]]*\])?\s*>)*<svg\b(?:[^>"'/]|"[^"]*"|'[^']*'|\/(?!>))*>/i;
/** Where the yard begins; other programs may give the tag a prefix, or reorder what it says. */
const START =
  /<(?:\w{1,20}:)?metadata\b[^<>]{0,500}?\bid\s{0,9}=\s{0,9}["']ohmyard["'][^<>]{0,500}>/;
const OURS = /<metadata id="ohmyard">[^<]*<\/metadata>/g;

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;' };
const names: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'"
};

const escaped = (text: string): string => text.replace(/[&<>]/g, (mark) => escapes[mark] as string);

const numbered = (code: number): string =>
  code <= 0x10ffff ? String.fromCodePoint(code) : '\ufffd';

/** Text as XML means it. Source: XML 1.0 (fifth edition), 4.1 and 4.6. */
const unescaped = (text: string): string =>
  text.replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(\w{1,4}));/gi, (all, hex, decimal, name) => {
    if (hex !== undefined) return numbered(Number.parseInt(hex, 16));
    return decimal === undefined ? (names[name] ?? all) : numbered(Number(decimal));
  });

/**
 * The picture with the yard inside, as text in its metadata; a yard that is there already is replaced.
 * @throws RangeError when the text is no SVG picture with content.
 */
export function writeSvg(svg: string, file: YardFile): string {
  const bare = svg.replace(OURS, '');
  const [root] = ROOT.exec(bare) ?? [];
  if (root === undefined)
    throw new RangeError('No SVG picture: it must begin with an <svg> that has content.');
  const inside = `<metadata id="${ID}">${escaped(asciiText(file))}</metadata>`;
  return root + inside + bare.slice(root.length);
}

const noYard = () =>
  new UnreadableError('no yard', 'This picture has no yard inside. Open one that was saved here.');

/**
 * Reads the yard inside an SVG picture; nothing else of the picture is used.
 * @throws UnreadableError with words for the reader.
 */
export function readSvg(svg: string): YardFile {
  const start = START.exec(svg);
  if (!start) throw /<\/(?:\w{1,20}:)?svg\s*>\s*$/.test(svg.slice(-200)) ? noYard() : cut();
  const from = start.index + start[0].length;
  const held = svg.slice(from, from + MAX_TEXT * 6);
  const [, raw] = /^\s*<!\[CDATA\[([^]*?)\]\]>/.exec(held) ?? [];
  if (raw !== undefined) return readText(raw.trim());
  const end = held.indexOf('<');
  if (end < 0) throw cut();
  return readText(unescaped(held.slice(0, end)).trim());
}

const cut = () =>
  new UnreadableError(
    'cut',
    'This picture breaks off before its end. Ask for the whole file again.'
  );
