import type { Idea, Play } from '../lesson';
import { families, fresh, wrongWords } from '../predict';
import { wakeId, type Waking } from '../share';

/** A wake-up call as the page plays it. */
export interface WakeUp extends Waking {
  readonly tells: string;
  readonly play: Play;
}

/** The call of an idea and a seed, with the cards it may bring. */
export function wakeUp({ id, lesson }: Waking, seed: number, ideas: readonly Idea[]): WakeUp {
  const family = families.find((each) => each.id === id) as (typeof families)[number];
  const made = fresh(family, seed);
  const { yard, scene, question, ask, tells, show } = made;
  const wrong = wrongWords(made);
  const codes = Object.values(wrong).flatMap((options) =>
    Object.values(options).map(({ idea }) => idea)
  );
  const cards = ideas.filter(({ code }) => codes.includes(code)).map((card) => [card.code, card]);
  const play: Play = {
    heading: ask,
    board: {
      sides: [{ title: '', yard, scene, drawn: { mirrored: false, order: [] } }],
      show,
      yours: 0,
      tools: []
    },
    call: { id: wakeId(id, seed), ask, question, wrong, opener: false },
    ideas: Object.fromEntries(cards) as Play['ideas'],
    calls: ''
  };
  return { id, lesson, tells, play };
}
