import { happened } from '../predict';
import { vehicles, vehicleWords } from '../yard';
import type { Outcome, Session } from './session.svelte';
import { reasonsFor } from './say';
import { unique } from './unique';

/** Whether the call asks which way locos go. */
export const asksWay = (session: Session): boolean =>
  session.slots.some(({ options }) => options.includes('west'));

/** What happened, in a sentence: "Plover went east and Heron stayed." */
export function told(session: Session, outcome: Outcome): string {
  if (session.question?.falls) {
    return session.slots
      .map(({ id, key }) => `${vehicleWords(id)} ${outcome.answers[key]}.`)
      .join(' ');
  }
  if (!asksWay(session)) {
    return session.slots
      .map(({ key }) => answerWords(key, outcome.answers[key] as string))
      .join(' ');
  }
  const sentences = outcome.played.map((played, side) => {
    const locos = session.slots.filter((slot) => slot.side === side).map((slot) => slot.id);
    const words = happened(played, locos);
    return session.board.sides.length > 1
      ? `In the ${session.board.sides[side]?.title}, ${words}`
      : words;
  });
  return sentences.join(' ');
}

const answerWords = (key: string, answer: string): string =>
  key.startsWith('meter ') ? `The meter '${key.slice(6)}' reads ${answer}.` : `${key}: ${answer}.`;

/** Why it happened, a sentence a yard; the engine has reasons for locos only. */
export function causes(session: Session, outcome: Outcome): readonly string[] {
  if (session.question?.which) return [];
  return outcome.played.flatMap((played, side) => {
    const locos = session.slots
      .filter((slot) => slot.side === side && slot.id in vehicles(played.after))
      .map((slot) => slot.id);
    const words = reasonsFor(played, unique(locos));
    if (words === '') return [];
    return [
      session.board.sides.length > 1
        ? `In the ${session.board.sides[side]?.title}: ${words}`
        : words
    ];
  });
}
