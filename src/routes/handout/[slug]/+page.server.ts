import { error } from '@sveltejs/kit';
import { lessonHandouts, planHandouts } from '$lib/server/handouts';
import { ideaCards } from '$lib/server/ideas';

const all = [...lessonHandouts, ...planHandouts];

export const entries = () => all.map(({ slug }) => ({ slug }));

export function load({ params }) {
  const found = all.find(({ slug }) => slug === params.slug);
  if (!found) error(404, `There is no handout '${params.slug}'.`);
  const { handout } = found;
  const codes = handout.calls.flatMap(({ wrong }) =>
    Object.values(wrong).flatMap((options) => Object.values(options).map(({ idea }) => idea))
  );
  return { handout, ideas: ideaCards.filter(({ code }) => codes.includes(code)) };
}
