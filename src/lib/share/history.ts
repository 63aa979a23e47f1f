/** Steps that can be taken back, unless said otherwise. */
export const MAX_STEPS = 500;

/** A value of plain data with what it was before and after. Nothing in it is ever changed. */
export interface History<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
  /** What the last change was made to; a further change to the same is part of that step. */
  readonly key?: string;
}

/** A value without a past. */
export const historyOf = <T>(now: T): History<T> => ({ past: [], now, future: [] });

const same = (one: unknown, other: unknown): boolean =>
  one === other || JSON.stringify(one) === JSON.stringify(other);

/**
 * The history after a change to `now`. With the `key` of the change before it, it is part of that
 * step; a step that ends where it began is none. At most `most` steps are remembered.
 */
export function changed<T>(
  history: History<T>,
  now: T,
  { key, most = MAX_STEPS }: { readonly key?: string; readonly most?: number } = {}
): History<T> {
  if (same(history.now, now)) return history;
  const merges = key !== undefined && key === history.key && history.past.length > 0;
  if (!merges) {
    const past = [...history.past, history.now].slice(-most);
    return { past, now, future: [], ...(key !== undefined && { key }) };
  }
  const { past } = history;
  return same(past.at(-1), now)
    ? { past: past.slice(0, -1), now, future: [] }
    : { past, now, future: [], key };
}

/** The history in which the next change begins a step of its own, as when a field is left. */
export const settled = <T>({ past, now, future }: History<T>): History<T> => ({
  past,
  now,
  future
});

/** One step back; the same history where there is none. */
export function undone<T>(history: History<T>): History<T> {
  const { past, now, future } = history;
  if (past.length === 0) return history;
  return { past: past.slice(0, -1), now: past.at(-1) as T, future: [now, ...future] };
}

/** One step forward again; the same history where there is none. */
export function redone<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future;
  if (history.future.length === 0) return history;
  return { past: [...history.past, history.now], now: next as T, future };
}
