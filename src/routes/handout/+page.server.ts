import { lessonHandouts, planHandouts } from '$lib/server/handouts';

const links = (all: typeof lessonHandouts) =>
  all.map(({ slug, handout }) => ({ slug, title: handout.title }));

export const load = () => ({ plans: links(planHandouts), lessons: links(lessonHandouts) });
