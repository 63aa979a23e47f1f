import * as v from 'valibot';
import { readBlock } from './block';
import { LessonError } from './error';

const FrontSchema = v.strictObject({
  code: v.pipe(v.string(), v.regex(/^M([1-9]|1\d|20)$/, 'a code from M1 to M20')),
  title: v.string()
});

/** A wrong idea: what many think, that it is not so, what to think instead. */
export interface Idea {
  readonly code: string;
  readonly title: string;
  readonly sentences: readonly string[];
}

/**
 * Reads an idea card: front matter and three sentences, each a paragraph.
 * @throws LessonError
 */
export function readIdea(file: string, text: string): Idea {
  const [, yaml, body] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
  if (yaml === undefined || body === undefined)
    throw new LessonError(file, 1, 'no front matter', 'code and title');
  const { value } = readBlock({ file, line: 2, yaml }, FrontSchema);
  const sentences = body
    .split(/\n\s*\n/)
    .map((each) => each.trim())
    .filter(Boolean);
  if (sentences.length !== 3) {
    throw new LessonError(file, 5, `${sentences.length} paragraphs`, 'three, one sentence each');
  }
  return { ...value, sentences };
}

/**
 * Reads all idea cards.
 * @throws LessonError for a bad card, or two cards with one code.
 */
export function readIdeas(
  files: readonly { readonly file: string; readonly text: string }[]
): readonly Idea[] {
  const seen = new Map<string, string>();
  return files.map(({ file, text }) => {
    const idea = readIdea(file, text);
    const other = seen.get(idea.code);
    if (other)
      throw new LessonError(file, 2, `code ${idea.code}, which ${other} has`, 'a code of its own');
    seen.set(idea.code, file);
    return idea;
  });
}
