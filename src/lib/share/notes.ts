import * as v from 'valibot';
import { HuntSchema, LogSchema } from './huntNotes';
import { putOn, setAside, StoreError, textOn, type Device } from './shelf';
import { tried, type Stored } from './tried';

/** What is noted beside a yard: its readings, ticks and last print-out. */
const place = { keys: 'ohmyard.notes.', aside: 'ohmyard.aside.notes.', noun: 'yard' };

const text = (most: number) => v.pipe(v.string(), v.maxLength(most));

/** Most characters of what is typed for one reading, and of initials. */
export const MAX_READING = 40;
export const MAX_INITIALS = 8;

const ReadingSchema = v.object({ text: text(MAX_READING), by: v.optional(text(MAX_INITIALS), '') });

const BenchSchema = v.object({
  /** What was read, by the line's key: as it was typed. */
  readings: v.optional(v.record(v.string(), ReadingSchema), {}),
  /** What is ticked, by the key of a wire or of a test by hand. */
  ticks: v.optional(v.record(v.string(), v.literal(true)), {})
});

const PrintedSchema = v.object({
  revision: v.pipe(v.number(), v.integer(), v.minValue(1)),
  /** The day, such as 2026-11-25. */
  day: v.string(),
  /** The yard as text, to tell whether anything has changed. */
  yard: v.string(),
  wires: v.array(
    v.object({
      number: v.number(),
      from: v.string(),
      to: v.string(),
      size: v.string(),
      lengthM: v.number(),
      colour: v.optional(v.string(), '')
    })
  )
});

const NotesSchema = v.object({
  version: v.literal(1),
  bench: v.optional(BenchSchema, {}),
  /** What stood before the card was begun anew. */
  before: v.optional(BenchSchema),
  /** The book that was printed last. */
  printed: v.optional(PrintedSchema),
  /** The fault hunt that is under way, and the one that was put aside last. */
  hunt: v.optional(HuntSchema),
  huntBefore: v.optional(HuntSchema),
  /** The practice hunt: see `practiceIn`. */
  practice: v.optional(v.unknown()),
  /** Faults that were found and mended. */
  faults: v.optional(LogSchema, [])
});

/** What was read and ticked at the bench. */
export type BenchNotes = Readonly<v.InferOutput<typeof BenchSchema>>;
/** A book as it was printed. */
export type Printed = Readonly<v.InferOutput<typeof PrintedSchema>>;
/** What is kept beside a yard: it is no part of the design. */
export type Notes = Readonly<v.InferOutput<typeof NotesSchema>>;

const nothing: Notes = { version: 1, bench: { readings: {}, ticks: {} }, faults: [] };

/** The notes in a text; what cannot be read is set aside, untouched. @throws StoreError */
function standing(device: Device, id: string): Notes {
  const kept = textOn(device, place, id);
  if (kept === null) return nothing;
  const value = parsed(kept);
  if (typeof value === 'object' && Number((value as { version?: unknown } | null)?.version) > 1) {
    throw new StoreError(
      'newer',
      'The notes of this yard were kept by a newer page. Reload while online, then try again.'
    );
  }
  const result = v.safeParse(NotesSchema, value);
  if (result.success) return result.output;
  setAside(device, place, id);
  throw new StoreError(
    'spoilt',
    'The notes of this yard were damaged. They are set aside, untouched, on this device.'
  );
}

function parsed(kept: string): unknown {
  try {
    return JSON.parse(kept);
  } catch {
    return undefined;
  }
}

/** The notes beside the yard of an id; empty ones where nothing was noted. */
export const readNotes = (device: Device, id: string): Stored<Notes> =>
  tried(() => standing(device, id));

/**
 * Changes the notes beside a yard. They are read anew first, so that what another tab has noted stays;
 * what stood there stays when it fails.
 */
export const changeNotes = (
  device: Device,
  id: string,
  change: (notes: Notes) => Notes
): Stored<Notes> =>
  tried(() => {
    const notes = change(standing(device, id));
    putOn(device, place, id, JSON.stringify(notes));
    return notes;
  });

/** A reading typed for a line; an empty text takes it away. */
export function withReading(notes: Notes, key: string, typed: string, by = ''): Notes {
  const { [key]: _, ...others } = notes.bench.readings;
  void _;
  const cut = typed.slice(0, MAX_READING);
  const own = { text: cut, by: by.slice(0, MAX_INITIALS) };
  const readings = cut.trim() === '' ? others : { ...others, [key]: own };
  return { ...notes, bench: { ...notes.bench, readings } };
}

/** A tick made, or taken back. */
export function withTick(notes: Notes, key: string, on: boolean): Notes {
  const { [key]: _, ...others } = notes.bench.ticks;
  void _;
  const ticks = on ? { ...others, [key]: true as const } : others;
  return { ...notes, bench: { ...notes.bench, ticks } };
}

const isEmpty = ({ readings, ticks }: BenchNotes): boolean =>
  Object.keys(readings).length + Object.keys(ticks).length === 0;

/** Readings and ticks begun anew; what stood is kept until that is done to others. */
export const begunAnew = (notes: Notes): Notes =>
  isEmpty(notes.bench) ? notes : { ...notes, bench: nothing.bench, before: notes.bench };

/** What stood before it was begun anew; what was noted since goes before that which it replaces. */
export const putBack = ({ before, ...notes }: Notes): Notes =>
  before
    ? {
        ...notes,
        bench: {
          readings: { ...before.readings, ...notes.bench.readings },
          ticks: { ...before.ticks, ...notes.bench.ticks }
        }
      }
    : notes;

/** The book marked as printed. */
export const withPrinted = (notes: Notes, printed: Printed): Notes => ({ ...notes, printed });
