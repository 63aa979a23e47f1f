export { driver, driveTo, isOver, settle, start, TICKS_PER_SECOND, type Drive } from './drive';
export { gapWords } from './gapWords';
export { playSequence, type StepPlayed } from './playSequence';
export { quayWorking } from './quayWorking';
export { SequenceSchema, type Sequence } from './sequence';
export { works, workingsOf, type Working } from './workings';
