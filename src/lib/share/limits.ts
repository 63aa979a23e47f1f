/** Most bytes of a file that is opened at all. */
export const MAX_FILE_BYTES = 50_000_000;
/** Most characters of a yard's text, and most bytes that a link may unfold to. A 40+20 yard with every value given has under 10 000. */
export const MAX_TEXT = 200_000;
/** Most characters of a link's yard. */
export const MAX_LINK = 16_000;
/** How deep lists and objects may stand in one another. */
export const MAX_DEPTH = 12;
/** Most values in a yard's text, and most values of one list: what checking a file may cost. */
export const MAX_VALUES = 5_000;
export const MAX_LIST = 200;
/** Most pieces of a PNG that are looked at. */
export const MAX_CHUNKS = 20_000;
/** Most characters of a name. */
export const MAX_NAME = 60;
