import { feedOf, placed, wire, type Part, type Yard } from '../yard';
import { terminal, wiresOf } from './wires';

/** A step of a road's current: along wires of the schedule, or through a part. */
export type LoopStep =
  | { readonly kind: 'wires'; readonly numbers: readonly number[] }
  | { readonly kind: 'part'; readonly part: Part };

/** The whole way of a road's current: out to its feed rail, and home from its return rail. */
export interface Loop {
  readonly road: string;
  /** The controller that feeds it. */
  readonly controller: 'controller' | 'controller 2';
  readonly out: readonly LoopStep[];
  readonly home: readonly LoopStep[];
}

interface Edge {
  readonly ends: readonly [string, string];
  readonly step: LoopStep;
}

/** The wires of the schedule and the contacts between them, without lamps. */
const edgesOf = (yard: Yard): readonly Edge[] => [
  ...wiresOf(yard)
    .filter(({ job }) => job !== 'lamp')
    .map(({ number, from, to }): Edge => ({
      ends: [from, to],
      step: { kind: 'wires', numbers: [number] }
    })),
  ...wire(yard)
    .filter(({ job }) => job !== 'lamp')
    .flatMap(placed)
    .filter(({ kind }) => kind !== 'wire')
    .map((part): Edge => ({
      ends: [terminal(part, 0), terminal(part, 1)],
      step: { kind: 'part', part }
    }))
];

/** The way with the fewest steps from one terminal to another; none where they are not joined. */
function way(edges: readonly Edge[], from: string, to: string): readonly LoopStep[] {
  const reached = new Map<string, readonly LoopStep[]>([[from, []]]);
  for (const [at, steps] of reached) {
    if (at === to) return steps;
    for (const { ends, step } of edges) {
      const next = ends[0] === at ? ends[1] : ends[1] === at ? ends[0] : undefined;
      if (next !== undefined && !reached.has(next)) reached.set(next, [...steps, step]);
    }
  }
  return [];
}

/** Most wires in a row that are told one by one. */
const SINGLY = 3;

/** The steps with long rows of wires told at once. */
function condensed(steps: readonly LoopStep[]): readonly LoopStep[] {
  const parts = steps.flatMap((step, index) => (step.kind === 'part' ? [index] : []));
  const bounds = [-1, ...parts, steps.length];
  return bounds.slice(1).flatMap((end, index) => {
    const row = steps.slice((bounds[index] as number) + 1, end);
    const numbers = row.flatMap((step) => (step.kind === 'wires' ? step.numbers : []));
    const told: readonly LoopStep[] = row.length > SINGLY ? [{ kind: 'wires', numbers }] : row;
    return [...told, ...steps.slice(end, end + 1)];
  });
}

/** Numbers of wires in words: one by one, or the first and the last of a long row. */
export const wiresText = (numbers: readonly number[]): string =>
  numbers.length > SINGLY ? `${numbers[0]} … ${numbers.at(-1)}` : numbers.join(', ');

/** The loop of a road, found in the schedule's wires alone. */
export function loopOf(yard: Yard, road: string): Loop {
  const edges = edgesOf(yard);
  const feed = feedOf(yard, road);
  return {
    road,
    controller: feed === 'feed 2' ? 'controller 2' : 'controller',
    out: condensed(way(edges, feed, `feed rail ${road}`)),
    home: condensed(way(edges, `return rail ${road}`, 'return'))
  };
}
