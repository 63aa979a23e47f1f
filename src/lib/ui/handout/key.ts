import type { Idea, Wrong } from '../../lesson';
import type { PaperCall } from '../../walk';
import type { Session, Slot } from '../session.svelte';
import { causes, told } from '../told';
import { unique } from '../unique';

/** The letter of an option by its place. */
export const letterAt = (index: number): string => String.fromCharCode(65 + index);

/** What a wrong option tells. */
export interface WrongLine {
  readonly letter: string;
  readonly option: string;
  /** What is asked, where there is more than one thing. */
  readonly of: string;
  readonly words: Wrong;
}

/** What the one who leads knows of a call: all of it from the engine, but for the lesson's own words. */
export interface CallKey {
  /** "Plover: C, east" for each thing asked; without its name where it is the only one. */
  readonly answers: readonly string[];
  /** What is seen; empty where the answer says it already. */
  readonly happened: string;
  readonly reasons: readonly string[];
  readonly wrong: readonly WrongLine[];
  /** A place to point at without telling the answer; nothing where no words are written. */
  readonly look?: string | undefined;
}

const named = (slots: readonly Slot[], { key }: Slot): string => (slots.length > 1 ? key : '');

function wrongLines(call: PaperCall, slots: readonly Slot[]): readonly WrongLine[] {
  return slots.flatMap((slot) =>
    slot.options.flatMap((option, index) => {
      const words = call.wrong[slot.key]?.[option];
      return words ? [{ letter: letterAt(index), option, of: named(slots, slot), words }] : [];
    })
  );
}

/** The key of a call on its board. */
export function keyOf(call: PaperCall, session: Session): CallKey {
  const outcome = session.solve();
  const { slots } = session;
  const answers = slots.map((slot) => {
    const answer = outcome.answers[slot.key] as string;
    const name = named(slots, slot);
    return `${name && `${name}: `}${letterAt(slot.options.indexOf(answer))}, ${answer}`;
  });
  const wrong = wrongLines(call, slots);
  const happened = told(session, outcome);
  return {
    answers,
    happened: slots.some(({ key }) => happened.startsWith(`${key}: `)) ? '' : happened,
    reasons: [...causes(session, outcome), ...(call.right === undefined ? [] : [call.right])],
    wrong,
    look: wrong[0]?.words.at
  };
}

/** The cards of the wrong ideas that these keys name, in their order. */
export const ideasIn = (keys: readonly CallKey[], ideas: readonly Idea[]): readonly Idea[] =>
  unique(keys.flatMap(({ wrong }) => wrong.map(({ words }) => words.idea))).flatMap(
    (code) => ideas.find((idea) => idea.code === code) ?? []
  );
