import { answer, answerKey, asked, QuestionError, questionKeys, type Question } from '../predict';
import { PlaceError } from '../yard';
import { placedError } from './block';
import { titleOf, type Side } from './board';
import { LessonError } from './error';
import type { Reading } from './schema';

/** One thing asked, and what the engine says of it. */
export interface Entry {
  readonly key: string;
  readonly options: readonly string[];
  readonly answer: string;
}

/** The engine's answers on one side; `at` is the key of the block in which the question stands. */
export function answered(
  { file, block }: Reading,
  question: Question,
  side: Side,
  at: readonly string[]
): readonly Omit<Entry, 'key'>[] {
  try {
    const { answers } = answer(question, side.yard, side.scene);
    return asked(question).map(({ id, options }) => ({
      id,
      options,
      answer: answers[id] as string
    }));
  } catch (error) {
    const line = (...path: readonly (string | number)[]) => block.lineOf([...at, ...path]);
    const done = question.which ? 'which' : 'do';
    if (error instanceof QuestionError) {
      throw new LessonError(file, line(keyOf(question)), error.met, error.allowed);
    }
    if (error instanceof PlaceError) {
      const met = `'${error.met}' in an edit`;
      throw new LessonError(file, line(done), met, error.allowed.join(', '));
    }
    throw placedError(error, file, (path) =>
      line(done, ...path.map((key) => (key === 'switches' ? 'switch' : key)))
    );
  }
}

const keyOf = (question: Question): string =>
  questionKeys.find((key) => question[key as keyof Question] !== undefined) as string;

/** The engine's answers for every side of the board. */
export const entries = (reading: Reading, question: Question): readonly Entry[] =>
  reading.board.sides.flatMap((side) =>
    answered(reading, question, side, []).map((each, index) => ({
      ...each,
      key: answerKey(asked(question)[index]?.id as string, titleOf(reading.board, side))
    }))
  );
