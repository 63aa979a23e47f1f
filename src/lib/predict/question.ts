import * as v from 'valibot';
import { ActionSchema, lampRoads, met, vehicles, type Scene, type Yard } from '../yard';
import { about } from './kinds/about';
import { compare } from './kinds/compare';
import { falls } from './kinds/falls';
import { fault } from './kinds/fault';
import { halve } from './kinds/halve';
import type { Asked, Played, QuestionKind } from './kinds/kind';
import { lamps } from './kinds/lamps';
import { limit } from './kinds/limit';
import { reads } from './kinds/reads';
import { testLamp } from './kinds/testLamp';
import { which } from './kinds/which';
import { play } from './play';

const kinds = [about, compare, which, limit, falls, lamps, reads, testLamp, halve, fault] as const;

/** Keys of the kinds of question; a question has exactly one of them. */
export const questionKeys: readonly string[] = kinds.map((kind) => kind.key);

/** What is done, and what is asked about it. */
export const questionEntries = {
  do: v.optional(ActionSchema),
  about: v.optional(about.schema),
  compare: v.optional(compare.schema),
  which: v.optional(which.schema),
  limit: v.optional(limit.schema),
  falls: v.optional(falls.schema),
  lamps: v.optional(lamps.schema),
  reads: v.optional(reads.schema),
  testLamp: v.optional(testLamp.schema),
  halve: v.optional(halve.schema),
  fault: v.optional(fault.schema)
};
export type Question = Readonly<
  v.InferOutput<v.StrictObjectSchema<typeof questionEntries, undefined>>
>;

function kindOf(question: Question): [QuestionKind, unknown] {
  const found = kinds.filter((kind) => question[kind.key as keyof Question] !== undefined);
  if (found.length !== 1) {
    throw new QuestionError(
      found.map((kind) => kind.key).join(' and ') || 'none of them',
      `exactly one of ${questionKeys.join(', ')}`
    );
  }
  const kind = found[0] as unknown as QuestionKind;
  return [kind, question[kind.key as keyof Question]];
}

/** A question that cannot be put, or whose answer is not among its options. */
export class QuestionError extends Error {
  readonly code = 'bad-question';
  constructor(
    readonly met: string,
    readonly allowed: string
  ) {
    super(`The question has ${met}; allowed: ${allowed}.`);
    this.name = 'QuestionError';
  }
}

/** What there is to decide. */
export function asked(question: Question): readonly Asked[] {
  const [kind, spec] = kindOf(question);
  return kind.asked(spec);
}

/** Locos, meters and lamps which must not be told before the call. */
export function hides(question: Question): readonly string[] {
  const [kind, spec] = kindOf(question);
  return kind.hides(spec);
}

/**
 * The engine's answer: plays what is done and looks.
 * @throws QuestionError when the answer is not among the options, or a loco, meter or lamp is not there.
 */
export function answer(
  question: Question,
  yard: Yard,
  scene: Scene
): { readonly answers: Readonly<Record<string, string>>; readonly played: Played } {
  const [kind, spec] = kindOf(question);
  const played = play(yard, scene, question.do);
  mustExist(kind.names(spec), played);
  const answers = kind.answer(spec, played);
  for (const { id, options } of kind.asked(spec)) {
    const given = answers[id] as string;
    if (!options.includes(given)) {
      throw new QuestionError(
        `options ${met(options)} without the engine's answer '${given}'`,
        'options with it'
      );
    }
  }
  return { answers, played };
}

function mustExist(names: readonly string[], { yard, after, reading }: Played): void {
  const meters = reading.circuit.elements
    .map((each) => each.id)
    .filter((id) => id.startsWith('meter ') || id === 'test lamp');
  const lamps = lampRoads(yard).map((road) => `lamp ${road}`);
  const there = [...Object.keys(vehicles(after)), ...meters, ...lamps];
  const missing = names.find((name) => !there.includes(name));
  if (missing)
    throw new QuestionError(`unknown '${missing}'`, `on this board: ${there.join(', ')}`);
}

/** Name under which an answer is kept: with a pair of yards, the yard's title is added. */
export const answerKey = (id: string, title: string | undefined): string =>
  title === undefined ? id : `${id}, ${title}`;
