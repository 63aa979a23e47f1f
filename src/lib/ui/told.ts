import { happened } from '../predict';
import type { Outcome, Session } from './session.svelte';
import { reasonsFor } from './say';
import { unique } from './unique';

/** Whether the call asks which way locos go. */
export const asksWay = (session: Session): boolean =>
  session.slots.some(({ options }) => options.includes('west'));

/** What happened, in a sentence: "Plover went east and Heron stayed." */
export function told(session: Session, outcome: Outcome): string {
  if (!asksWay(session)) {
    return session.slots.map(({ key }) => `${key}: ${outcome.answers[key]}.`).join(' ');
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

/** Why it happened, a sentence a yard; nothing where the call asks no way. */
export function causes(session: Session, outcome: Outcome): readonly string[] {
  if (!asksWay(session)) return [];
  return outcome.played.map((played, side) => {
    const locos = session.slots.filter((slot) => slot.side === side).map((slot) => slot.id);
    return reasonsFor(played, unique(locos));
  });
}
