import { settle } from '../motion';
import { read, vehicles, type Scene, type Yard } from '../yard';
import { answerOf, sceneAfter } from './answered';
import { plainText } from './plain';
import type { WalkCall, WalkStep } from './walkthrough';

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Whether what is done leaves all as it is; a question that offers several things to do is none of these. */
function doesNothing(yard: Yard, scene: Scene, { question }: WalkCall): boolean {
  if (question.which) return false;
  const after = sceneAfter(yard, scene, question.do);
  return question.do === undefined || (after !== undefined && same(scene, after));
}

/** Whether the outcome stands in the scene before anything is done. */
function standsAlready(yard: Yard, scene: Scene, { question }: WalkCall): boolean {
  if (question.limit) return read(yard, settle(yard, scene)).limiting;
  return (question.falls?.of ?? []).some((name) => vehicles(scene)[name]?.fallen);
}

/** How an answer is said in a sentence about what was asked. */
const sayings: Readonly<Record<string, string>> = {
  stays: 'stays|stands still|does not move',
  west: '(?:goes|runs|moves|drives) west',
  east: '(?:goes|runs|moves|drives) east',
  'falls in': 'falls',
  'does not move': 'stays|does not move|does not fall'
};

const saysIt = (step: WalkStep, answers: Readonly<Record<string, string>>): boolean =>
  Object.entries(answers).some(([name, given]) =>
    new RegExp(`\\b${name} (?:then |will )?(?:${sayings[given] ?? '(?!)'})`).test(
      plainText(`${step.heading}. ${step.words}`)
    )
  );

/** What makes a step's call fail; nothing where it has none. */
export function callAdvice(yard: Yard, step: WalkStep): readonly string[] {
  const { call, scene } = step;
  if (!call) return [];
  const found = answerOf(yard, scene, call);
  if ('wrong' in found) return [`This call cannot be asked here. ${found.wrong}`];
  return [
    ...(call.ask.trim() === ''
      ? ['The call has no words: say what is done and what you ask.']
      : []),
    ...(doesNothing(yard, scene, call)
      ? ['Nothing is done in this call, so the picture has its answer: let a hand do something.']
      : []),
    ...(standsAlready(yard, scene, call)
      ? ['What is asked stands on the board already: begin from a board where it has not happened.']
      : []),
    ...(saysIt(step, found.answers)
      ? ['The words tell the answer before the call: leave it to the reader.']
      : [])
  ];
}
