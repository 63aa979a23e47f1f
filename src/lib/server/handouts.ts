import { slugOf } from '../lesson';
import { lessonHandout, pickedHandout, plans, type Handout } from '../walk';
import { lessons } from './lessons';

const entry = (slug: string, handout: Handout) => ({ slug, handout });

/** A handout for each lesson, by its address. */
export const lessonHandouts = lessons.map((lesson) =>
  entry(slugOf(lesson.slug), lessonHandout(lesson))
);

/** A handout for each plan of a workshop, by its address. */
export const planHandouts = plans.map(({ id, name, minutes, calls }) =>
  entry(`workshop-${id}`, pickedHandout(`${name}, ${minutes} minutes`, calls, lessons))
);
