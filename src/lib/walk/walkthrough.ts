import * as v from 'valibot';
import { asked, questionEntries, QuestionError, type Question } from '../predict';
import { formats } from '../share';
import {
  admit,
  BorderError,
  fitWhole,
  SceneSchema,
  YardSchema,
  type Finding,
  type Scene,
  type Yard
} from '../yard';
import { MAX_ASK, MAX_LIT, MAX_STEPS, MAX_TITLE, MAX_WORDS } from './limits';

/** The name of the form: it tells walkthroughs from yards. */
export const WALK_FORMAT = formats.walkthrough.format;

const text = (most: number) => {
  const allowed = `a text of at most ${most} characters`;
  return v.pipe(v.string(allowed), v.maxLength(most, allowed));
};

/** Views a step can show. */
export const walkViews = ['plan', 'rows', 'panel', 'diagram'] as const;
const views = v.array(v.picklist(walkViews, walkViews.join(', ')));

const CallSchema = v.strictObject({ ask: text(MAX_ASK), ...questionEntries });

const StepSchema = v.strictObject({
  heading: text(MAX_TITLE),
  /** Markdown of which paragraphs, lists, **strong** and *emphasised* words are shown; the rest is plain text. */
  words: text(MAX_WORDS),
  scene: v.optional(SceneSchema, {}),
  /** Names of places, vehicles, or `road A` for its whole loop. */
  lit: v.optional(v.pipe(v.array(text(MAX_TITLE)), v.maxLength(MAX_LIT, `at most ${MAX_LIT}`)), []),
  show: v.optional(v.pipe(views, v.minLength(1, 'one view at least')), ['rows']),
  call: v.optional(CallSchema)
});

/** A walkthrough as it is passed on: what is left out has its default. */
export const WalkSchema = v.strictObject({
  format: v.literal(WALK_FORMAT),
  version: v.literal(1),
  title: text(MAX_TITLE),
  yard: YardSchema,
  steps: v.pipe(
    v.array(StepSchema),
    v.minLength(1, 'one step at least'),
    v.maxLength(MAX_STEPS, `at most ${MAX_STEPS} steps`)
  )
});

/** What the reader is asked; the answer is never written down, the engine gives it. */
export interface WalkCall {
  readonly ask: string;
  readonly question: Question;
}

/** One step: words, a whole scene, what to light, which views to show, and perhaps a call. */
export interface WalkStep {
  readonly heading: string;
  readonly words: string;
  readonly scene: Scene;
  readonly lit: readonly string[];
  readonly show: readonly (typeof walkViews)[number][];
  readonly call?: WalkCall;
}

/** An explanation of one yard, step by step. */
export interface Walkthrough {
  readonly title: string;
  readonly yard: Yard;
  readonly steps: readonly WalkStep[];
}

type StepFile = v.InferOutput<typeof StepSchema>;

/** What is done at its place, findings told with the way to it. */
function at<T>(path: Finding['path'], act: () => T): T {
  try {
    return act();
  } catch (error) {
    if (error instanceof BorderError) {
      const findings = error.findings.map((each) => ({ ...each, path: [...path, ...each.path] }));
      throw new BorderError('walkthrough', findings);
    }
    if (!(error instanceof QuestionError)) throw error;
    throw new BorderError('walkthrough', [{ path, met: error.met, allowed: error.allowed }]);
  }
}

function callOf({ ask, ...question }: NonNullable<StepFile['call']>): WalkCall {
  asked(question);
  return { ask, question };
}

function stepOf(yard: Yard, step: StepFile, index: number): WalkStep {
  const { call, scene, ...rest } = step;
  const path = ['steps', index];
  return {
    ...rest,
    scene: at([...path, 'scene'], () => fitWhole(yard, scene)),
    ...(call && { call: at([...path, 'call'], () => callOf(call)) })
  };
}

/**
 * Lets a walkthrough in, defaults filled in and every scene fitted to its yard.
 * @throws BorderError naming each place that does not fit.
 */
export function admitWalk(value: unknown): Walkthrough {
  const { title, yard, steps } = admit('walkthrough', WalkSchema, value);
  return { title, yard, steps: steps.map((step, index) => stepOf(yard, step, index)) };
}

const stepFile = ({ heading, words, scene, lit, show, call }: WalkStep) => ({
  heading,
  words,
  scene,
  lit,
  show,
  ...(call && { call: { ask: call.ask, ...call.question } })
});

/** The walkthrough as plain data for a file, which `admitWalk` lets in again. */
export const walkFile = ({ title, yard, steps }: Walkthrough) => ({
  format: WALK_FORMAT,
  version: 1 as const,
  title,
  yard,
  steps: steps.map(stepFile)
});
