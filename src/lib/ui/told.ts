import { happened, lampBecause, probeBecause } from '../predict';
import { sentence, vehicles, vehicleWords } from '../yard';
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

const meterNames: Readonly<Record<string, string>> = {
  volts: 'voltmeter',
  ohms: 'ohmmeter'
};

function answerWords(key: string, answer: string): string {
  if (key.startsWith('test lamp')) return `The ${key} is ${answer}.`;
  if (key.startsWith('lamp ')) return `Lamp ${key.slice(5)} is ${answer}.`;
  if (!key.startsWith('meter ')) return sentence(`${key}: ${answer}`);
  const [, name = '', side = ''] = /^meter ([^,]+)(.*)$/.exec(key) ?? [];
  return `The ${meterNames[name] ?? `meter '${name}'`}${side} reads ${answer}.`;
}

/** Why it happened, a sentence a yard; the engine has reasons for locos, lamps and what probes are held at. */
export function causes(session: Session, outcome: Outcome): readonly string[] {
  if (session.question?.which) return [];
  return outcome.played.flatMap((played, side) => {
    const locos = session.slots
      .filter((slot) => slot.side === side && slot.id in vehicles(played.after))
      .map((slot) => slot.id);
    const lamps = session.question?.lamps ?? [];
    const words = [
      reasonsFor(played, unique(locos)),
      ...lamps.map((road) => lampBecause(played, road)),
      session.question?.reads || session.question?.testLamp ? probeBecause(played) : ''
    ]
      .filter(Boolean)
      .join(' ');
    if (words === '') return [];
    return [
      session.board.sides.length > 1
        ? `In the ${session.board.sides[side]?.title}: ${words}`
        : words
    ];
  });
}
