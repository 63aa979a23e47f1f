import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readLesson, type Lesson } from '../../src/lib/lesson';

/** Top of the repository. */
export const root = join(import.meta.dirname, '../..');

/** A file of `content/`, by its name from the top. */
export const contentOf = (file: string): string => readFileSync(join(root, file), 'utf8');

/** The files of a folder of `content/` that end in `.md`, in order. */
export const filesIn = (
  folder: string
): readonly { readonly file: string; readonly text: string }[] =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => ({ file: `${folder}/${name}`, text: contentOf(`${folder}/${name}`) }));

/** A lesson with the file it stands in and its number; the home page has number 0. */
export interface Placed {
  readonly file: string;
  readonly number: number;
  readonly lesson: Lesson;
}

/** Every lesson in order. */
export const lessons: readonly Placed[] = filesIn('content/lessons').map(({ file, text }) => ({
  file,
  number: Number.parseInt(file.split('/').at(-1) as string, 10),
  lesson: readLesson(file, text)
}));

const home = 'content/home.md';

/** Every lesson, and the home page, which is written as one. */
export const pages: readonly Placed[] = [
  { file: home, number: 0, lesson: readLesson(home, contentOf(home)) },
  ...lessons
];
