export { driveTo, isOver, settle, start, TICKS_PER_SECOND, type Drive } from './drive';
export type { MotionEvent } from './event';
