import { readLesson, slugOf, type Lesson } from '../lesson';
import { roundOf, type Round } from '../walk';

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

/**
 * The calls of these ids as rounds of a workshop.
 * @throws Error naming a call that is in no lesson, or that a room cannot vote on.
 */
export const roundsOf = (ids: readonly string[]): readonly Round[] => ids.map(roundNamed);

function roundNamed(id: string): Round {
  const lesson = lessons.find(({ slug }) => id.startsWith(`${slug}/`));
  const step = lesson?.steps.find(({ call }) => call?.id === id);
  const round = lesson && step && roundOf(lesson, step);
  if (!round) {
    throw new Error(
      `The workshop's plan names the call '${id}': name one of a lesson with one thing to decide.`
    );
  }
  return round;
}

function card(lesson: Lesson): LessonCard {
  const calls = lesson.steps.flatMap((step) => (step.call ? [step.call.id] : []));
  return { ...lesson.meta, slug: slugOf(lesson.slug), number: numberOf(lesson), calls };
}
