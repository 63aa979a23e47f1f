/** Real seconds in which a watched scene is shown. */
const SHOW_SECONDS = 1.5;

/** From one drawing to the next; between them vehicles glide (`theme.css`), s. */
const STEP_SECONDS = 0.1;

/** Whether the reader wants no motion. */
const wantsStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/**
 * Calls `frame` with the share of the show that has passed, 0 to 1, ten times a second; the last call
 * is 1. Where no motion is wanted there is that last call only. Returns a way to stop.
 */
export function show(frame: (share: number) => void): () => void {
  if (wantsStill()) {
    frame(1);
    return () => undefined;
  }
  let handle = 0;
  let begun: number | undefined;
  let due = 0;
  const next = (now: number) => {
    begun ??= now;
    const seconds = (now - begun) / 1000;
    const isOver = seconds >= SHOW_SECONDS;
    if (isOver || seconds >= due) {
      frame(isOver ? 1 : seconds / SHOW_SECONDS);
      due = seconds + STEP_SECONDS;
    }
    if (!isOver) handle = requestAnimationFrame(next);
  };
  handle = requestAnimationFrame(next);
  return () => cancelAnimationFrame(handle);
}
