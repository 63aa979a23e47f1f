import { slugOf } from '../lesson';
import { lessonHandout, type Handout } from '../walk';
import { lessons } from './lessons';

/** Every handout there is, by the last part of its address. */
export const handouts: ReadonlyMap<string, Handout> = new Map(
  lessons.map((lesson) => [slugOf(lesson.slug), lessonHandout(lesson)])
);
