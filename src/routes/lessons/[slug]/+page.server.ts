import { error } from '@sveltejs/kit';
import { ideaCards } from '$lib/server/ideas';
import { lessonCards } from '$lib/server/lessons';

/** How many lessons there are; unknown while numbers of the arc are still missing. */
const count = lessonCards.every(({ number }, index) => number === index + 1)
  ? lessonCards.length
  : undefined;

export const entries = () => lessonCards.map(({ slug }) => ({ slug }));

export function load({ params }) {
  const index = lessonCards.findIndex(({ slug }) => slug === params.slug);
  const lesson = lessonCards[index];
  if (!lesson) error(404, `There is no lesson '${params.slug}'.`);
  const next = lessonCards[index + 1];
  return {
    lesson,
    next: next && { slug: next.slug, title: next.title },
    count,
    own: lesson.own && {
      ideas: ideaCards,
      lessons: lessonCards.map(({ number, slug, title }) => ({ number, slug, title }))
    }
  };
}
