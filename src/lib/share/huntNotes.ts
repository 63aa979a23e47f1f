import * as v from 'valibot';

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));

/** Most characters of a test's id, and of one field of the fault log. */
const MAX_TEXT = 400;
/** Most readings of one hunt, and most lines of a log. */
const MAX_TOLD = 500;
const MAX_LINES = 1000;

const ToldSchema = v.object({
  test: text(MAX_TEXT),
  outcome: text(MAX_TEXT),
  /** The reading as it was typed, where one was. */
  typed: v.optional(text(40))
});

export const HuntSchema = v.object({
  /** The day on which it began, such as 2026-11-25. */
  begun: v.string(),
  /** What was seen first, in words; empty where nobody knew. */
  seen: v.optional(text(MAX_TEXT), ''),
  /** How often a reading is taken to be wrong, as a share. */
  wrong: v.optional(v.pipe(v.number(), v.minValue(0), v.maxValue(0.1)), 0),
  told: v.pipe(v.array(ToldSchema), v.maxLength(MAX_TOLD))
});

const LineSchema = v.object({
  day: v.string(),
  seen: text(MAX_TEXT),
  measured: text(MAX_TEXT),
  mended: text(MAX_TEXT),
  proved: text(MAX_TEXT),
  by: v.optional(text(8), '')
});

export const LogSchema = v.pipe(v.array(LineSchema), v.maxLength(MAX_LINES));

/** One reading of a hunt at the real yard. */
export type HuntReading = Readonly<v.InferOutput<typeof ToldSchema>>;
/** A hunt at the real yard, as far as it has come. */
export type HuntNotes = Readonly<v.InferOutput<typeof HuntSchema>>;
/** One line of the fault log. */
export type FaultLine = Readonly<v.InferOutput<typeof LineSchema>>;

/** What of the notes beside a yard belongs to fault hunts. */
interface HuntKept {
  readonly hunt?: HuntNotes | undefined;
  readonly huntBefore?: HuntNotes | undefined;
  readonly faults: readonly FaultLine[];
}

/** The notes with a hunt in the place of the one that stands there. */
export const withHunt = <T extends HuntKept>(notes: T, hunt: HuntNotes): T => ({ ...notes, hunt });

/** The notes with the hunt put aside; it can be taken up again until another one is. */
export const huntAside = <T extends HuntKept>({ hunt, ...notes }: T) => ({
  ...notes,
  ...(hunt ? { huntBefore: hunt } : {})
});

/** The notes with the hunt that was put aside; what stands there is put aside for it. */
export const huntBack = <T extends HuntKept>({ hunt, huntBefore, ...notes }: T) => ({
  ...notes,
  ...(huntBefore ? { hunt: huntBefore } : {}),
  ...(hunt ? { huntBefore: hunt } : {})
});

const cut = (words: string): string => words.slice(0, MAX_TEXT);

/** The notes with one more line in the fault log; a full log gives up its oldest line. */
export const withFault = <T extends HuntKept>(notes: T, line: FaultLine): T => ({
  ...notes,
  faults: [
    ...notes.faults,
    {
      ...line,
      seen: cut(line.seen),
      measured: cut(line.measured),
      mended: cut(line.mended),
      proved: cut(line.proved),
      by: line.by.slice(0, 8)
    }
  ].slice(-MAX_LINES)
});

/** The notes without the line at that place of the fault log. */
export const withoutFault = <T extends HuntKept>(notes: T, index: number): T => ({
  ...notes,
  faults: notes.faults.filter((_, each) => each !== index)
});
