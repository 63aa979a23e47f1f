import { lessonCards } from '$lib/server/lessons';

export const load = () => ({ lessons: lessonCards });
