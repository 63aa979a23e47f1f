import * as v from 'valibot';
import { questionEntries, type Question } from '../predict';
import { YardSchema } from '../yard';
import type { Block } from './block';
import { sceneEntries, type BoardData, type Side } from './board';
import { DrawnSchema } from './drawn';
import { words } from './limits';

const WrongSchema = v.strictObject({
  /** Code of the wrong idea behind the option. */
  idea: v.pipe(v.string(), v.regex(/^M([1-9]|1\d|20)$/, 'a code from M1 to M20')),
  /** The one place to look at. */
  at: v.string('the name of a place'),
  say: words(20)
});
/** Words for a wrong answer: the idea behind it, the place to look at, the cause. */
export type Wrong = Readonly<v.InferOutput<typeof WrongSchema>>;
/** Words for each wrong option. */
export type WrongOptions = Readonly<Record<string, Wrong>>;

/** The same idea on another yard: what it does not state is as on the board. */
export const TwinSchema = v.strictObject({
  yard: v.optional(YardSchema),
  ...v.partial(v.strictObject(sceneEntries)).entries,
  drawn: v.optional(DrawnSchema),
  ask: v.optional(words(35)),
  ...questionEntries,
  /** What to say beside the engine's own reason. */
  right: v.optional(words(30))
});

const options = v.record(v.string(), WrongSchema, '{ idea, at, say } for each wrong option');

/** A call block. */
export const CallSchema = v.strictObject({
  ask: words(35),
  ...questionEntries,
  /** Words for each wrong option; where several things are asked, one list for each of them. */
  wrong: v.record(v.string(), v.union([WrongSchema, options], '{ idea, at, say }')),
  /** What to say beside the engine's own reason. */
  right: v.optional(words(30)),
  /** Three reasons, the first of them right; asked after a wrong or unsure call. */
  reasons: v.optional(
    v.pipe(v.array(v.string()), v.length(3, 'three reasons, the right one first'))
  ),
  twin: v.optional(TwinSchema),
  /** Number of the earlier lesson which this call wakes up. */
  wakes: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1))),
  /** The "do you need this?" call at the start of a lesson. */
  opener: v.optional(v.boolean(), false)
});
export type CallInput = v.InferOutput<typeof CallSchema>;

/** A call block being read: its file, its way back to lines, its board. */
export interface Reading {
  readonly file: string;
  readonly block: Block<CallInput>;
  readonly board: BoardData;
}

/** The same idea on another yard, as the page plays it. */
export interface TwinData {
  /** What its yard is like, in words. */
  readonly intro: string;
  readonly ask: string;
  readonly side: Side;
  readonly question: Question;
  readonly right?: string | undefined;
}

/** A question with its words, as the page plays it. */
export interface CallData {
  readonly id: string;
  readonly ask: string;
  readonly question: Question;
  /** Words for each wrong option of each thing asked. */
  readonly wrong: Readonly<Record<string, WrongOptions>>;
  readonly right?: string | undefined;
  readonly reasons?: readonly string[] | undefined;
  readonly twin?: TwinData | undefined;
  readonly wakes?: number | undefined;
  readonly opener: boolean;
}
