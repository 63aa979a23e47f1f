/** Real seconds in which a watched scene is shown. */
const SHOW_SECONDS = 1.5;

/** Whether the reader wants no motion. */
const wantsStill = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/**
 * Calls `frame` with the share of the show that has passed, 0 to 1, once a frame; the last call is 1.
 * Where no motion is wanted there is that last call only. Returns a way to stop.
 */
export function show(frame: (share: number) => void): () => void {
  if (wantsStill()) {
    frame(1);
    return () => undefined;
  }
  let handle = 0;
  let begun: number | undefined;
  const next = (now: number) => {
    begun ??= now;
    const share = Math.min((now - begun) / 1000 / SHOW_SECONDS, 1);
    frame(share);
    if (share < 1) handle = requestAnimationFrame(next);
  };
  handle = requestAnimationFrame(next);
  return () => cancelAnimationFrame(handle);
}
