import * as v from 'valibot';
import { admit, BorderError } from '../yard';

const TrySchema = v.strictObject({
  right: v.boolean(),
  sure: v.picklist(['a guess', 'fairly', 'certain']),
  /** The day it was made, counted from 1 January 1970 where the reader is; the first version kept none. */
  day: v.optional(v.pipe(v.number(), v.integer('a whole number of days'), v.minValue(0)))
});

/** What was kept before tries had days reads as it is: such tries have none. */
const VERSION = 2 as const;
const VersionSchema = v.pipe(
  v.picklist([1, VERSION], '1 or 2'),
  v.transform(() => VERSION)
);

const ProgressSchema = v.strictObject({
  version: VersionSchema,
  /** Tries at each call, oldest first. */
  calls: v.record(v.string(), v.array(TrySchema))
});

/** One try at a call: whether it was right, how sure, and on which day. */
export type Try = Readonly<v.InferOutput<typeof TrySchema>>;
export type Sureness = Try['sure'];
/** What a learner has called so far; kept on this device only. */
export interface Progress {
  readonly version: typeof VERSION;
  readonly calls: Readonly<Record<string, readonly Try[]>>;
}

/** How sure a call can be. */
export const surenesses: readonly Sureness[] = ['a guess', 'fairly', 'certain'];

/** Nothing called yet. */
export const noProgress: Progress = { version: VERSION, calls: {} };

/** The progress with one more try. */
export const withTry = (progress: Progress, id: string, attempt: Try): Progress => ({
  ...progress,
  calls: { ...progress.calls, [id]: [...(progress.calls[id] ?? []), attempt] }
});

/** How many tries there are in all. */
export const countTries = ({ calls }: Progress): number => Object.values(calls).flat().length;

/** Whether the last try was wrong though certain: then the twin is called next time, until it is called rightly. */
export function owesTwin(progress: Progress, id: string): boolean {
  const last = progress.calls[id]?.at(-1);
  const twin = progress.calls[`${id}/twin`]?.at(-1);
  return last !== undefined && !last.right && last.sure === 'certain' && twin?.right !== true;
}

/**
 * Reads progress from its text.
 * @throws BorderError when it is damaged; the text itself is left alone.
 */
export function readProgress(text: string): Progress {
  try {
    return admit('progress', ProgressSchema, JSON.parse(text));
  } catch (error) {
    if (error instanceof BorderError) throw error;
    throw new BorderError('progress', [
      { path: [], met: 'text that is no JSON', allowed: 'saved progress' }
    ]);
  }
}
