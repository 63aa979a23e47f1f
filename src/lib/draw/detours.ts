import type { Run } from '../yard';

/** A wire of a leg that passes rows which are none of its own, and how far beside the leg it goes. */
export interface Detour {
  readonly id: string;
  readonly job: Run['job'];
  readonly lane: number;
}

/** Rows between which a wire runs; a terminal of the controller stands above the first. */
interface Span {
  readonly run: Run;
  readonly top: number;
  readonly low: number;
}

function spanOf(run: Run, order: readonly string[]): Span | undefined {
  const [a, b] = [run.from, run.to].map((node) => {
    if (node === run.job) return -1;
    return node.startsWith(`${run.job} tag `)
      ? order.indexOf(node.split(' ').at(-1) as string)
      : NaN;
  }) as [number, number];
  return Number.isNaN(a + b) ? undefined : { run, top: Math.min(a, b), low: Math.max(a, b) };
}

const overlap = (a: Span, b: Span): boolean =>
  a.run.job === b.run.job && a.top < b.low && b.top < a.low;

/**
 * The wires which pass rows when the roads are drawn in another order than they are wired in:
 * the shortest goes nearest to its leg, and no two share a lane where they lie side by side.
 */
export function detours(runs: readonly Run[], order: readonly string[]): readonly Detour[] {
  const spans = runs
    .filter(({ id, road }) => road === undefined && !id.startsWith('closing link'))
    .flatMap((run) => spanOf(run, order) ?? [])
    .filter(({ top, low }) => low - top > 1)
    .sort((a, b) => a.low - a.top - (b.low - b.top));
  const laid: (Span & { readonly lane: number })[] = [];
  for (const span of spans) {
    const taken = laid.filter((other) => overlap(span, other)).map(({ lane }) => lane);
    laid.push({ ...span, lane: Math.max(0, ...taken) + 1 });
  }
  return laid.map(({ run: { id, job }, lane }) => ({ id, job, lane }));
}
