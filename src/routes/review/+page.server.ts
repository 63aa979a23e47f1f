import { ideaCards } from '$lib/server/ideas';
import { lessonCards } from '$lib/server/lessons';

export const load = () => ({
  ideas: ideaCards,
  lessons: lessonCards.map(({ number, slug, title }) => ({ number, slug, title }))
});
