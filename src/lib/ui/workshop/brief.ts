import type { Outcome, Session } from '../session.svelte';
import { asksWay, causes, told } from '../told';

/** Most words of a sentence on a projected screen. */
const MOST_WORDS = 15;

const wordsIn = (text: string): number => text.split(/\s+/).filter(Boolean).length;

/** The first sentence, without what follows its colon where it is long. */
function firstOf(text: string): string {
  const [sentence = ''] = text.split(/(?<=[.!?]) /);
  return wordsIn(sentence) <= MOST_WORDS ? sentence : `${sentence.split(':')[0] ?? ''}.`;
}

/**
 * Why it happened in fifteen words at most, as the engine says it, else as the lesson does; the other way
 * round where things are compared, for then the engine tells of each alone. Empty where neither is so short.
 */
export const briefCause = (session: Session, outcome: Outcome, right: string | undefined): string =>
  (session.question?.compare
    ? [right ?? '', ...causes(session, outcome)]
    : [...causes(session, outcome), right ?? '']
  )
    .map(firstOf)
    .find((text) => text !== '' && wordsIn(text) <= MOST_WORDS) ?? '';

/** The answer in words: what locos did, else the option as it was offered. */
export const briefTold = (session: Session, outcome: Outcome, option: string): string =>
  asksWay(session) || session.question?.falls ? told(session, outcome) : `${option}.`;
