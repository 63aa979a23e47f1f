import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readLesson } from '../../src/lib/lesson';
import { plans, roundOf, type Round } from '../../src/lib/walk';

const folder = join(import.meta.dirname, '..', '..', 'content', 'lessons');

/** Ids of the calls of all plans. */
export const planned: readonly string[] = [...new Set(plans.flatMap(({ calls }) => calls))];

/** The rounds of the lessons that a plan names, by their ids. */
export const rounds: ReadonlyMap<string, Round> = new Map(
  readdirSync(folder)
    .filter((name) => planned.some((id) => id.startsWith(name.replace('.md', '/'))))
    .map((name) => readLesson(name, readFileSync(join(folder, name), 'utf8')))
    .flatMap((lesson) => lesson.steps.map((step) => roundOf(lesson, step)))
    .flatMap((round): [string, Round][] => (round ? [[round.id, round]] : []))
);
