import type { StepPlay } from '../../walk';
import { Session } from '../session.svelte';
import { causes, told } from '../told';

/** A call as paper has it: what is asked, with its boxes; and its answer, for the last page. */
export interface PaperCall {
  readonly ask: string;
  readonly slots: readonly { readonly key: string; readonly options: readonly string[] }[];
  readonly answer: string;
}

/** The call of a step for paper; undefined where it has none. */
export function paperCall({ play }: StepPlay): PaperCall | undefined {
  if (!play.call) return undefined;
  const session = new Session(play.board, play.call.question);
  const outcome = session.solve();
  return {
    ask: play.call.ask,
    slots: session.slots,
    answer: [told(session, outcome), ...causes(session, outcome)].join(' ')
  };
}
