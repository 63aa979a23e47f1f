import type { Question } from '../predict';

/** What the hand does to see the answer: "Throw the switch". */
export function actionName(question: Question | undefined): string {
  const todo = question?.do;
  if (todo?.switch) return 'Throw the switch';
  if (todo?.selector !== undefined) return 'Turn the selector';
  if (todo?.controller !== undefined || todo?.second !== undefined) return 'Turn the knob';
  return todo?.edits ? 'Make the change' : 'See the answer';
}
