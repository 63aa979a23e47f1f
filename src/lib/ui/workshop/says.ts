import type { Stage } from '../../walk';

/** The name of each stage, for the corner of the screen. */
export const stageNames: Readonly<Record<Stage, string>> = {
  set: 'The yard',
  predict: 'Alone',
  first: 'First vote',
  talk: 'Talk',
  second: 'Second vote',
  throw: 'The switch',
  seen: 'What moved?',
  why: 'Why',
  check: 'The same idea',
  checked: 'Its answer'
};

/** What the room does at each stage, at most fifteen words. */
export const stageSays: Readonly<Record<Stage, string>> = {
  set: 'Say it together: every switch, every wire, every loco.',
  predict: 'Alone, without a word: mark your answer on your sheet.',
  first: 'Cards up, all together, on three.',
  talk: 'Find someone who chose another letter. Point at the place.',
  second: 'Cards up again, all together, on three.',
  throw: 'One of you does it. All others look.',
  seen: 'What did you see? Say it before you say why.',
  why: '',
  check: 'The same idea on another yard. Alone: mark your answer.',
  checked: ''
};

/** What is said instead where phones vote. */
export const withPhones: Partial<Record<Stage, string>> = {
  predict: 'Alone, without a word: make up your mind.',
  first: 'Vote now, by phone or with your card.',
  second: 'Vote again, by phone or with your card.'
};

/** What is said with a hint instead of it. */
export const WITH_HINT = 'Think again, alone. Then talk, and point at the place.';
