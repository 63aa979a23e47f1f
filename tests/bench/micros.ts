/** A clock, ms. */
export type Clock = () => number;

/** Time that this process has had, ms: for calls so long that others are served meanwhile. */
export const processorTime: Clock = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Least time of a call over several rounds, µs. */
export function micros(
  calls: number,
  call: (n: number) => void,
  { rounds = 9, clock = () => performance.now() }: { rounds?: number; clock?: Clock } = {}
): number {
  let least = Infinity;
  for (let round = 0; round < rounds; round++) {
    const start = clock();
    for (let n = 0; n < calls; n++) call(n);
    least = Math.min(least, ((clock() - start) * 1000) / calls);
  }
  return least;
}
