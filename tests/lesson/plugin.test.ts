import { describe, expect, test } from 'vitest';
import { lessons } from '../../scripts/lessons';
import { LessonError, readIdeas, readLesson, toPage } from '../../src/lib/lesson';
import { thrown } from '../yard/build';
import { filesIn, root } from './files';
import { file, sample, sampleWith } from './sample';

type Transform = (text: string, id: string) => Promise<{ readonly code: string } | undefined>;

/** What the plugin makes of a text at a place in the repository. */
const transformed = (text: string, place = file): ReturnType<Transform> =>
  (lessons().transform as unknown as Transform)(text, `${root}/${place}`);

/** The room is loaded from its sources, which takes longer than the call itself. */
const timeout = 30_000;

describe('lessons(): the plugin that turns lessons into pages', { timeout }, () => {
  test('a sound lesson becomes a page with a player for its board', async () => {
    const code = (await transformed(sample))?.code ?? '';
    expect(code).toMatch(/^import \{ Player, .*\} from '\$lib\/ui';$/m);
    expect(code.match(/<Player play=\{plays\[\d+\]\} \/>/g)).toEqual([
      '<Player play={plays[0]} />'
    ]);
    expect(code).toContain('<Step id="step-1" after={[]}>');
    expect(code).toContain('<Step id="step-2" after={["99-sample/1"]}>');
    expect(code).toContain('## Second step');
    expect(code).not.toContain('```');
  });

  test.each([
    [
      { 25: 'about: [Plovr]' },
      `${file}:25: unknown 'Plovr'. Allowed: on this board: Plover, Heron.`
    ],
    [{ 15: 'yard: { deckRoads: 41 }' }, `${file}:15: 41 in \`yard.deckRoads\`. Allowed: 1 to 40`]
  ])('a lesson with a mistake stops the build: %j', async (change, message) => {
    await expect(transformed(sampleWith(change))).rejects.toMatchObject({ name: 'LessonError' });
    await expect(transformed(sampleWith(change))).rejects.toThrow(message);
  });

  test('the home page is one too; what is no lesson passes by', async () => {
    await expect(transformed('no lesson', 'content/home.md')).rejects.toThrow(
      'content/home.md:1: '
    );
    expect(await transformed('no lesson', 'content/about.md')).toBeUndefined();
    expect(await transformed('no lesson', 'src/lib/lesson/index.ts')).toBeUndefined();
  });
});

describe('toPage(file, lesson, ideas)', () => {
  const lesson = readLesson(file, sample);

  test('carries the cards which a wrong call can bring, and nothing that ends a script', () => {
    const page = toPage(file, lesson, readIdeas(filesIn('content/ideas')));
    const [, json] = /const plays = (.*);/.exec(page) ?? [];
    const [play, none] = JSON.parse(json ?? '') as [{ ideas: object; calls: string }, unknown];
    expect(Object.keys(play.ideas)).toEqual(['M5', 'M17']);
    expect(play.calls).toBe('#step-1');
    expect(none).toBeNull();
    expect(json).not.toContain('<');
  });

  test('an idea without a card stops the build', () => {
    const error = thrown(() => toPage(file, lesson, []));
    expect(error).toBeInstanceOf(LessonError);
    expect((error as LessonError).message).toContain(`${file}:10: no card for the idea 'M5'`);
  });

  test('a text that would end the script is written so that it cannot', () => {
    const sly = sampleWith({ 27: '  stays: { idea: M5, at: toggle A, say: "</script>" }' });
    const page = toPage(file, readLesson(file, sly), readIdeas(filesIn('content/ideas')));
    expect(page.match(/<\/script>/g)).toHaveLength(1);
    expect(page).toContain('\\u003c/script>');
  });
});
