import { answer, QuestionError, type Question } from '../predict';
import {
  act,
  BorderError,
  once,
  PlaceError,
  RefusedError,
  type Action,
  type Scene,
  type Yard
} from '../yard';
import type { WalkCall } from './walkthrough';

/** Whether an error says that something asked or done does not fit the yard or the scene. */
const isMisfit = (error: unknown): error is Error =>
  [QuestionError, BorderError, PlaceError, RefusedError].some((kind) => error instanceof kind);

/** The scene after hands have done something; undefined where it cannot be done. */
export function sceneAfter(
  yard: Yard,
  scene: Scene,
  action: Action | undefined
): Scene | undefined {
  try {
    return action && act(yard, scene, action);
  } catch (error) {
    if (!isMisfit(error)) throw error;
    return undefined;
  }
}

type Answered = { readonly answers: Readonly<Record<string, string>> } | { readonly wrong: string };

function answered(yard: Yard, scene: Scene, question: Question): Answered {
  try {
    return { answers: answer(question, yard, scene).answers };
  } catch (error) {
    if (!isMisfit(error)) throw error;
    return { wrong: error.message };
  }
}

/** Each question is played once, however often its words are changed. */
const known = once((yard: Yard) =>
  once((scene: Scene) => once((question: Question) => answered(yard, scene, question)))
);

/** The engine's answer to a call in its scene, or why it cannot be asked there. */
export const answerOf = (
  yard: Yard,
  scene: Scene,
  { question }: Pick<WalkCall, 'question'>
): Answered => known(yard)(scene)(question);
