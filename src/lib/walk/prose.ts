/** A piece of a line: plain words, or words that are strong or emphasised. */
export interface Span {
  readonly text: string;
  readonly look: 'plain' | 'strong' | 'emphasis';
}

/** A paragraph, or a list of lines. */
export type Block =
  | { readonly kind: 'paragraph'; readonly spans: readonly Span[] }
  | {
      readonly kind: 'list';
      readonly ordered: boolean;
      readonly items: readonly (readonly Span[])[];
    };

/** Strong or emphasised words: no blank just inside the stars. Source: CommonMark 0.31.2, 6.2. */
const MARKED = /\*\*(?=[^\s*])([^*]*[^\s*])\*\*|\*(?=[^\s*])([^*]*[^\s*])\*/g;
const ITEM = /^ {0,3}(?:[-*+]|(\d{1,9})[.)]) +(?=\S)/;

function spansOf(text: string): readonly Span[] {
  const spans: Span[] = [];
  let from = 0;
  const plain = (to: number) => {
    if (to > from) spans.push({ text: text.slice(from, to), look: 'plain' });
  };
  for (const match of text.matchAll(MARKED)) {
    const [whole, strong, emphasis] = match;
    plain(match.index);
    spans.push(
      strong === undefined
        ? { text: emphasis as string, look: 'emphasis' }
        : { text: strong, look: 'strong' }
    );
    from = match.index + whole.length;
  }
  plain(text.length);
  return spans;
}

/** The items of a list: lines that go on an item belong to it. */
function itemsOf(lines: readonly string[]): readonly string[] {
  const items: string[] = [];
  for (const line of lines) {
    if (ITEM.test(line)) items.push(line.replace(ITEM, '').trim());
    else items.push(`${items.pop() ?? ''} ${line.trim()}`);
  }
  return items;
}

function blockOf(lines: readonly string[]): Block {
  const first = ITEM.exec(lines[0] ?? '');
  if (!first)
    return { kind: 'paragraph', spans: spansOf(lines.map((line) => line.trim()).join(' ')) };
  const items = itemsOf(lines).map(spansOf);
  return { kind: 'list', ordered: first[1] !== undefined, items };
}

/** Lines that belong together: blank lines part them, and so does the first line of a list. */
function groupsOf(text: string): readonly (readonly string[])[] {
  const groups: string[][] = [[]];
  for (const line of text.split('\n')) {
    const now = groups.at(-1) as string[];
    const inList = ITEM.test(now[0] ?? '');
    if (line.trim() === '') groups.push([]);
    else if (ITEM.test(line) && !inList && now.length > 0) groups.push([line]);
    else now.push(line);
  }
  return groups.filter((group) => group.length > 0);
}

/**
 * The words of a step as blocks: paragraphs, lists, **strong** and *emphasised* words, the subset of
 * CommonMark that walkthroughs may use. All else is plain text: there is no markup that it could become.
 */
export const proseOf = (text: string): readonly Block[] => groupsOf(text).map(blockOf);
