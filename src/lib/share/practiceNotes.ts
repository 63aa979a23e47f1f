import * as v from 'valibot';

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));
const whole = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most));

/** Most characters of an id or of words, and most tests and repairs of one hunt. */
const MAX_TEXT = 400;
const MAX_SEEN = 20_000;
const MAX_DONE = 5000;
/** The highest number of a hunt. */
export const MAX_SEED = 999_999;

const PracticeSchema = v.object({
  level: v.picklist([1, 2, 3]),
  seed: whole(MAX_SEED),
  /** What was told first, in words. */
  seen: text(MAX_SEEN),
  /** Tests made, and what they showed. */
  made: v.pipe(
    v.array(
      v.object({
        test: text(MAX_TEXT),
        outcome: text(MAX_TEXT),
        figure: v.optional(text(40))
      })
    ),
    v.maxLength(MAX_DONE)
  ),
  /** Faults named, and after how many tests. */
  guesses: v.pipe(
    v.array(v.object({ name: text(MAX_TEXT), isRight: v.boolean(), after: whole(MAX_DONE) })),
    v.maxLength(MAX_DONE)
  ),
  isGivenUp: v.optional(v.boolean(), false),
  /** The reader has left it; it can be taken up again. */
  isLeft: v.optional(v.boolean(), false)
});

/** A practice hunt, as far as it has come; what is hidden is not in it. */
export type PracticeNotes = Readonly<v.InferOutput<typeof PracticeSchema>>;

/** What of the notes beside a yard belongs to practice; it is checked when it is asked for, so that damage stays its own. */
interface PracticeKept {
  readonly practice?: unknown;
}

/** The practice hunt in the notes; undefined where there is none, `damaged` where it cannot be read. */
export function practiceIn({ practice }: PracticeKept): PracticeNotes | 'damaged' | undefined {
  if (practice === undefined) return undefined;
  const result = v.safeParse(PracticeSchema, practice);
  return result.success ? result.output : 'damaged';
}

/** The notes with a practice hunt in the place of the one that stands there. */
export const withPractice = <T extends PracticeKept>(notes: T, practice: PracticeNotes): T => ({
  ...notes,
  practice
});
