import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runnerImport, type Plugin } from 'vite';

type LessonRoom = typeof import('../src/lib/lesson/index.ts');

const isLesson = (id: string): boolean => /\/content\/(lessons\/[^/?]+|home)\.md$/.test(id);

/** Turns the board and call blocks of a lesson into players, after the engine has answered them. */
export function lessons(): Plugin {
  let room: Promise<LessonRoom> | undefined;
  return {
    name: 'ohmyard-lessons',
    enforce: 'pre',
    async transform(text, id) {
      if (!isLesson(id)) return undefined;
      room ??= lessonRoom();
      const { readLesson, readIdeas, toPage } = await room;
      const root = id.slice(0, id.indexOf('/content/'));
      const file = id.slice(root.length + 1);
      return { code: toPage(file, readLesson(file, text), readIdeas(ideaFiles(root))), map: null };
    }
  };
}

/** The room is run from its sources, as the site runs it. */
const lessonRoom = async (): Promise<LessonRoom> =>
  (await runnerImport<LessonRoom>(join(import.meta.dirname, '../src/lib/lesson/index.ts'))).module;

function ideaFiles(root: string) {
  const folder = 'content/ideas';
  return readdirSync(join(root, folder)).map((name) => {
    const file = `${folder}/${name}`;
    return { file, text: readFileSync(join(root, file), 'utf8') };
  });
}
