import type { Walkthrough } from './walkthrough';

/** A walkthrough as a lesson's Markdown, or why it cannot be one; what reads lessons comes only now. */
export const asLesson = async (walk: Walkthrough) => (await import('./markdown')).lessonText(walk);
