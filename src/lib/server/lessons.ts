import { readLesson, slugOf, type Lesson } from '../lesson';

const files = import.meta.glob<string>('/content/lessons/*.md', {
  query: '?raw',
  import: 'default',
  eager: true
});

/** What a list of lessons tells of one. */
export interface LessonCard extends Pick<
  Lesson['meta'],
  'title' | 'minutes' | 'can' | 'rule' | 'bench' | 'terms' | 'own'
> {
  readonly slug: string;
  readonly number: number;
  /** Ids of its calls. */
  readonly calls: readonly string[];
}

const numberOf = ({ slug }: Lesson): number => Number.parseInt(slug, 10);

/** All lessons in the order of their numbers. */
export const lessons: readonly Lesson[] = Object.entries(files)
  .map(([file, text]) => readLesson(file.slice(1), text))
  .sort((a, b) => numberOf(a) - numberOf(b));

/** What a list tells of each lesson, in the same order. */
export const lessonCards: readonly LessonCard[] = lessons.map(card);

function card(lesson: Lesson): LessonCard {
  const calls = lesson.steps.flatMap((step) => (step.call ? [step.call.id] : []));
  return { ...lesson.meta, slug: slugOf(lesson.slug), number: numberOf(lesson), calls };
}
