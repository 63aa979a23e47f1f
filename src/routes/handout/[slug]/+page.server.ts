import { error } from '@sveltejs/kit';
import { handouts } from '$lib/server/handouts';
import { ideaCards } from '$lib/server/ideas';

export const entries = () => [...handouts.keys()].map((slug) => ({ slug }));

export function load({ params }) {
  const handout = handouts.get(params.slug);
  if (!handout) error(404, `There is no handout '${params.slug}'.`);
  const codes = handout.calls.flatMap(({ wrong }) =>
    Object.values(wrong).flatMap((options) => Object.values(options).map(({ idea }) => idea))
  );
  return { handout, ideas: ideaCards.filter(({ code }) => codes.includes(code)) };
}
