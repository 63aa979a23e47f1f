/** Which of how many parts of the yards a long test tries, one of them in each process, and for how long. */
const [part = 0, parts = 1] = (process.env.PART ?? '0/1').split('/').map(Number);
export const MINUTES = Number(process.env.MINUTES ?? 180);

/** The same order each time, as if drawn by lot: a run that is cut short has tried a fair share. */
export function* share<T>(all: readonly T[]): Generator<T> {
  const end = Date.now() + MINUTES * 60_000;
  const lot = (index: number) => (index * 7919 + 13) % 104729;
  const order = all.map((_, index) => index).sort((a, b) => lot(a) - lot(b));
  for (const index of order.filter((each) => each % parts === part)) {
    if (Date.now() > end) return;
    yield all[index] as T;
  }
}
