/** What the drawing adds to the bare reading: calls, what was seen, the trace, places pointed at. */
export interface Marks {
  /** Roads whose result is not told yet. */
  readonly untold: readonly string[];
  /** Calls made: what each loco was said to do. */
  readonly calls: Readonly<Record<string, string>>;
  /** What each loco was seen to do, and where it started, mm. */
  readonly seen: Readonly<Record<string, { readonly way: string; readonly fromMm: number }>>;
  /** Places in the order of the trace, as far as it is shown. */
  readonly trace: readonly string[];
  /** Open places, ringed and told. */
  readonly breaks: readonly string[];
  /** The place pointed at, by hand or by words. */
  readonly pointed: string | undefined;
  /** What the words are about: places, vehicles, `road A`, `deck` and `pin`. */
  readonly lit: readonly string[];
  /** What differs from the scene before, named in the same way. */
  readonly changed: readonly string[];
}

/** A drawing without any mark. */
export const noMarks: Marks = {
  untold: [],
  calls: {},
  seen: {},
  trace: [],
  breaks: [],
  pointed: undefined,
  lit: [],
  changed: []
};
