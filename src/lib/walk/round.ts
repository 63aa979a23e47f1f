import type { BoardData, Lesson, StepData } from '../lesson';
import { answer, asked, type Question } from '../predict';
import type { Side } from '../lesson';
import type { WalkStep, Walkthrough } from './walkthrough';

/** One question for a room, with its board. */
export interface Asking {
  readonly board: BoardData;
  readonly question: Question;
  readonly ask: string;
  /** What to say beside the engine's own reason. */
  readonly right?: string | undefined;
}

/** What a room is asked in one round of a workshop. */
export interface Round extends Asking {
  readonly id: string;
  /** Where it comes from: the lesson, or the walkthrough's step. */
  readonly title: string;
  /** The rule in one sentence. */
  readonly rule?: string | undefined;
  /** Places to look at, the best first: none of them tells the answer. */
  readonly look: readonly string[];
  /** The same idea on another yard. */
  readonly twin?: Asking | undefined;
}

/** Letters of the options. */
export const letters = ['A', 'B', 'C', 'D'] as const;

/** What can be answered, in the order of the letters. */
export const optionsOf = (question: Question): readonly string[] =>
  asked(question).flatMap(({ options }) => options);

/** The place of the engine's answer among the options. */
export function rightOf({ board, question }: Asking): number {
  const { yard, scene } = board.sides[0] as Side;
  const [thing] = asked(question);
  return optionsOf(question).indexOf(answer(question, yard, scene).answers[thing?.id ?? ''] ?? '');
}

/** Whether a room can vote on it with letters: one thing on one yard. */
const isVotable = (board: BoardData, question: Question): boolean =>
  board.sides.length === 1 &&
  asked(question).length === 1 &&
  optionsOf(question).length <= letters.length;

const still = (board: BoardData, sides: BoardData['sides']): BoardData => ({
  sides,
  show: board.show.filter((view) => view !== 'diagram'),
  yours: 0,
  tools: []
});

/** A lesson's call as a round; none where a room cannot vote on it with letters. */
export function roundOf({ meta }: Lesson, { board, call }: StepData): Round | undefined {
  if (!board || !call || !isVotable(board, call.question)) return undefined;
  const { id, ask, question, right, wrong, twin } = call;
  const look = Object.values(wrong).flatMap((options) => Object.values(options));
  return {
    id,
    title: meta.title,
    rule: meta.rule,
    ask,
    question,
    right,
    board: still(board, board.sides),
    look: [...new Set(look.map(({ at }) => at))],
    twin:
      twin && isVotable({ ...board, sides: [twin.side] }, twin.question)
        ? {
            ask: twin.ask,
            question: twin.question,
            right: twin.right,
            board: still(board, [twin.side])
          }
        : undefined
  };
}

function walkRound({ yard }: Walkthrough, step: WalkStep, index: number): readonly Round[] {
  const { call, heading, scene, show, lit } = step;
  const side = { title: '', yard, scene, drawn: { mirrored: false, order: [] } };
  const board: BoardData = { sides: [side], show, yours: 0, tools: [] };
  if (!call || !isVotable(board, call.question)) return [];
  const { ask, question } = call;
  return [
    {
      id: `step ${index + 1}`,
      title: heading,
      ask,
      question,
      board: still(board, [side]),
      look: lit
    }
  ];
}

/** The calls of a walkthrough that a room can vote on with letters. */
export const walkRounds = (walk: Walkthrough): readonly Round[] =>
  walk.steps.flatMap((step, index) => walkRound(walk, step, index));
