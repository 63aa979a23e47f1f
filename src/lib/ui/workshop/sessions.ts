import { Session } from '../session.svelte';
import type { Asking } from '../../walk';

/** A board that waits for the room; a new one each time it is asked anew or the switch is thrown again. */
export const sessionFor = ({ board, question }: Asking): Session => new Session(board, question);

/** Shows the answer: the switch is thrown; of things to try out the one whose turn it is. */
export function reveal(session: Session, throws: number): void {
  session.commit();
  const tries = Object.values(session.question?.which?.of ?? {});
  const turn = tries[throws % tries.length];
  if (turn) session.tryOut(turn);
}

/** What is tried out at this throw; nothing where nothing is chosen from. */
export function triedAt({ question }: Asking, throws: number): string {
  const names = Object.keys(question.which?.of ?? {});
  return names[throws % names.length] ?? '';
}
