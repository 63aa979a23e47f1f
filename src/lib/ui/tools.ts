import type { BoardData } from '../lesson';
import type { Question } from '../predict';
import { isHeld, type Edit } from '../yard';

/** The wire edits which a panel offers: those of the board, and those the question plays with. Meters stay where they are; what is held by hand has its own control. */
export function toolsFor(board: BoardData, question: Question | undefined): readonly Edit[] {
  const all = [
    ...board.tools,
    ...board.sides.flatMap(({ scene }) => scene.edits),
    ...(question?.do?.edits ?? []),
    ...Object.values(question?.which?.of ?? {}).flatMap((action) => action.edits ?? [])
  ].filter((edit) => !('meter' in edit) && !isHeld(edit));
  const byText = new Map(all.map((edit): [string, Edit] => [JSON.stringify(edit), edit]));
  return [...byText.values()];
}
