/** Why something cannot be opened. */
export type WhyWrong =
  | 'empty'
  | 'foreign'
  | 'elsewhere'
  | 'no yard'
  | 'cut'
  | 'changed'
  | 'damaged'
  | 'too big'
  | 'too much'
  | 'newer'
  | 'does not fit';

/** Text or bytes that hold no yard which can be opened; the message is for the reader. */
export class UnreadableError extends Error {
  constructor(
    readonly why: WhyWrong,
    words: string
  ) {
    super(words);
    this.name = 'UnreadableError';
  }
}
