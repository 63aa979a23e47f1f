import type { InferInput } from 'valibot';
import * as v from 'valibot';
import { answer, questionEntries, type Question } from '../../src/lib/predict';
import { admit, type YardInput } from '../../src/lib/yard';
import { moment, type SceneInput } from '../yard/build';

const QuestionSchema = v.strictObject(questionEntries);
export type QuestionInput = InferInput<typeof QuestionSchema>;

/** A question let in as a lesson writes it. */
export const questionOf = (input: QuestionInput): Question =>
  admit('question', QuestionSchema, input);

/** A small board. */
export interface BoardInput {
  readonly yard?: YardInput;
  readonly scene?: SceneInput;
}

/** The engine's answers to a question on a board. */
export function answers(
  input: QuestionInput,
  { yard = { deckRoads: 2 }, scene = {} }: BoardInput
): Readonly<Record<string, string>> {
  const { yard: built, scene: at } = moment(yard, scene);
  return answer(questionOf(input), built, at).answers;
}
