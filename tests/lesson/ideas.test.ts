import { describe, expect, test } from 'vitest';
import { LessonError, readIdeas } from '../../src/lib/lesson';
import { thrown } from '../yard/build';
import { filesIn } from './files';

const card = (code: string, paragraphs = 3): string =>
  [
    '---',
    `code: ${code}`,
    'title: A wrong idea',
    '---',
    '',
    Array<string>(paragraphs).fill('One sentence.').join('\n\n'),
    ''
  ].join('\n');

const at = (name: string, text: string) => ({ file: `content/ideas/${name}.md`, text });

describe('readIdeas(files)', () => {
  const ideas = readIdeas(filesIn('content/ideas'));

  test('reads M1 to M20, each in the file of its number', () => {
    const codes = Array.from({ length: 20 }, (_, index) => `M${String(index + 1)}`);
    expect(ideas.map(({ code }) => code)).toEqual(codes);
    expect(
      filesIn('content/ideas').map(({ file }) => Number(/M(\d+)\.md$/.exec(file)?.[1]))
    ).toEqual(codes.map((_, index) => index + 1));
  });

  test.each(ideas)('$code: $title: many think, it is not so, instead', ({ sentences }) => {
    const [think, not, instead] = sentences;
    expect(sentences).toHaveLength(3);
    expect(think).toMatch(/^Many of us think .*\.$/);
    expect(not).toMatch(/^It is not so: in the yard you just saw, .*\.$/);
    expect(instead).toMatch(/^Instead, .*\.$/);
  });

  test('two cards with one code: names both files', () => {
    const error = thrown(() => readIdeas([at('M01', card('M1')), at('M07', card('M1'))]));
    expect(error).toBeInstanceOf(LessonError);
    expect((error as LessonError).message).toBe(
      'content/ideas/M07.md:2: code M1, which content/ideas/M01.md has. Allowed: a code of its own.'
    );
  });

  test.each([
    ['an unknown code', card('M21'), 2, 'a code from M1 to M20'],
    ['no front matter', 'Many of us think so.', 1, 'code and title'],
    ['two sentences', card('M1', 2), 5, 'three, one sentence each'],
    ['four sentences', card('M1', 4), 5, 'three, one sentence each'],
    ['no title', card('M1').replace('title:', 'heading:'), 2, 'a value: it must be given']
  ])('%s: refused with file and line', (_, text, line, allowed) => {
    const error = thrown(() => readIdeas([at('M01', text)]));
    expect(error).toBeInstanceOf(LessonError);
    expect(error).toMatchObject({ file: 'content/ideas/M01.md', line, allowed });
  });
});
