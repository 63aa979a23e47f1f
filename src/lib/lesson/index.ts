export type { BoardData, Side, ViewName } from './board';
export type { Redrawn } from './drawn';
export { LessonError } from './error';
export { readIdeas, type Idea } from './idea';
export { readLesson, slugOf, type Lesson, type StepData } from './lesson';
export { toPage, type Play } from './page';
export type { CallData, Wrong } from './schema';
