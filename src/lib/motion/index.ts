export type { MotionEvent } from './backstop';
export { driveTo, settle, start, TICKS_PER_SECOND, type Drive } from './drive';
