/** Most steps of a walkthrough. */
export const MAX_STEPS = 40;
/** Most characters of a title or a heading. */
export const MAX_TITLE = 60;
/** Most characters of a step's words: far more than the 45 words that read well. */
export const MAX_WORDS = 1000;
/** Most characters of a question. */
export const MAX_ASK = 300;
/** Most things that are lit in one step: more are no longer looked at. Source: common practice. */
export const MAX_LIT = 3;
