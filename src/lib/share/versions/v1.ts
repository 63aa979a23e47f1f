import type { Version } from './version';

/** The first form: a yard, a name where it is not the yard's own, and a scene or none. */
export const v1: Version = { version: 1 };
