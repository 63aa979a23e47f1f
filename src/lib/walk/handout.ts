import type { BoardData, CallData, Lesson } from '../lesson';
import type { Question } from '../predict';
import { holes } from '../yard';
import type { Walkthrough } from './walkthrough';

/** A call as it stands on paper. */
export interface PaperCall {
  readonly id: string;
  readonly heading: string;
  readonly board: BoardData;
  readonly question: Question;
  readonly ask: string;
  /** What to say beside the engine's own reason. */
  readonly right?: string | undefined;
  /** Words for each wrong option of each thing asked; none where nobody has written any. */
  readonly wrong: CallData['wrong'];
}

/** What is handed out on paper: calls, and what to say about them all. */
export interface Handout {
  readonly title: string;
  readonly calls: readonly PaperCall[];
  /** The rule in one sentence. */
  readonly rule?: string | undefined;
  /** Five minutes at a yard of one's own. */
  readonly bench?: string | undefined;
}

/** The board with the views that paper has room for: rows, and the plan where a deck moves or nothing else is shown. */
function onPaper(board: BoardData): BoardData {
  const shows = (view: 'plan' | 'rows') => board.show.includes(view);
  const moves = board.sides.some(({ yard }) => holes(yard).length > 0);
  const plan = shows('plan') && (moves || !shows('rows'));
  const rows = shows('rows') || !plan;
  return {
    sides: board.sides,
    show: [...(plan ? (['plan'] as const) : []), ...(rows ? (['rows'] as const) : [])],
    yours: 0,
    tools: []
  };
}

function lessonCalls({ steps }: Lesson): readonly PaperCall[] {
  return steps.flatMap(({ heading, board, call }) => {
    if (!board || !call) return [];
    const { id, ask, question, right, wrong } = call;
    return [{ id, heading, board: onPaper(board), question, ask, right, wrong }];
  });
}

/** Every call of a lesson, in its order. */
export const lessonHandout = (lesson: Lesson): Handout => ({
  title: lesson.meta.title,
  calls: lessonCalls(lesson),
  rule: lesson.meta.rule,
  bench: lesson.meta.bench
});

/**
 * Calls picked from lessons by their ids, in the order of the ids, each under its lesson's title; those that
 * are not there are left out.
 */
export function pickedHandout(
  title: string,
  ids: readonly string[],
  lessons: readonly Lesson[]
): Handout {
  const all = lessons.flatMap((lesson) =>
    lessonCalls(lesson).map((call) => ({ ...call, heading: lesson.meta.title }))
  );
  return { title, calls: ids.flatMap((id) => all.find((call) => call.id === id) ?? []) };
}

/** Every call of a walkthrough, in its order. */
export const walkHandout = ({ title, yard, steps }: Walkthrough): Handout => ({
  title,
  calls: steps.flatMap(({ heading, scene, show, call }, index) => {
    if (!call) return [];
    const side = { title: '', yard, scene, drawn: { mirrored: false, order: [] } };
    const board = onPaper({ sides: [side], show, yours: 0, tools: [] });
    return [{ id: `step ${index + 1}`, heading, board, ...call, wrong: {} }];
  })
});
