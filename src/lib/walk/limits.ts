/** Most steps of a walkthrough. */
export const MAX_STEPS = 40;
/** Most characters of a title or a heading. */
export const MAX_TITLE = 60;
/** Most characters of a step's words: far more than the 45 words that read well. */
export const MAX_WORDS = 1000;
/** Most words of a step that read well beside a drawing. Source: common practice. */
export const GOOD_WORDS = 45;
/** Most changes of the board from one step to the next that one can see at once. Source: common practice. */
export const GOOD_CHANGES = 3;
/** Most characters of a question. */
export const MAX_ASK = 300;
/** Most things that are lit in one step: more are no longer looked at. Source: common practice. */
export const MAX_LIT = 3;
/** Most characters of a walkthrough's text: 40 full steps of a 40+20 yard have about 85 000. */
export const MAX_WALK_TEXT = 500_000;
/** Most values in a walkthrough's text: what checking a file may cost. */
export const MAX_WALK_VALUES = 20_000;
