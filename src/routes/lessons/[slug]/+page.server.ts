import { error } from '@sveltejs/kit';
import { lessonCards } from '$lib/server/lessons';

export const entries = () => lessonCards.map(({ slug }) => ({ slug }));

export function load({ params }) {
  const index = lessonCards.findIndex(({ slug }) => slug === params.slug);
  const lesson = lessonCards[index];
  if (!lesson) error(404, `There is no lesson '${params.slug}'.`);
  const next = lessonCards[index + 1];
  return {
    lesson,
    next: next && { slug: next.slug, title: next.title },
    count: lessonCards.length
  };
}
