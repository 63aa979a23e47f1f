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

/** All lessons in the order of their numbers. */
export const lessonCards: readonly LessonCard[] = Object.entries(files)
  .map(([file, text]) => card(readLesson(file.slice(1), text)))
  .sort((a, b) => a.number - b.number);

function card({ slug, meta, steps }: Lesson): LessonCard {
  const calls = steps.flatMap((step) => (step.call ? [step.call.id] : []));
  return { ...meta, slug: slugOf(slug), number: Number.parseInt(slug, 10), calls };
}
