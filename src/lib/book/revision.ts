import { colourText } from './colours';
import { wiresOf, type Wire } from './wires';
import type { Yard } from '../yard';

/** A wire as a print-out has it. */
export type PrintedWire = Pick<Wire, 'number' | 'from' | 'to' | 'size' | 'lengthM'> & {
  readonly colour: string;
};

/** The schedule of a yard as it is printed. */
export const printedWires = (yard: Yard): readonly PrintedWire[] =>
  wiresOf(yard).map((wire) => {
    const { number, from, to, size, lengthM } = wire;
    return { number, from, to, size, lengthM, colour: colourText(yard, wire) };
  });

/** One thing that a change of the yard does to its wiring. */
export interface Change {
  readonly kind: 'added' | 'removed' | 'altered';
  readonly number: number;
  readonly from: string;
  readonly to: string;
  /** What is other than it was, in words; empty for a wire that is new or gone. */
  readonly what: string;
}

/** Numbers that moved together: `first` to `last` are `by` more than they were. */
export interface Renumbered {
  readonly first: number;
  readonly last: number;
  readonly by: number;
}

/** What a print-out has that the yard no longer has, and the other way round. */
export interface Changes {
  readonly changes: readonly Change[];
  readonly renumbered: readonly Renumbered[];
}

/** A wire is the same wire as long as it joins the same two terminals. */
const keyOf = ({ from, to }: PrintedWire): string => [from, to].sort().join(' – ');

const METRE_DIGITS = 3;

function whatChanged(before: PrintedWire, now: PrintedWire): string {
  const lengths = [before, now].map(({ lengthM }) => lengthM.toFixed(METRE_DIGITS)) as [
    string,
    string
  ];
  const pairs: readonly (readonly [string, string, string])[] = [
    ['size', before.size, now.size],
    ['colour', before.colour || 'none', now.colour || 'none'],
    ['length', `${Number(lengths[0])} m`, `${Number(lengths[1])} m`]
  ];
  return pairs
    .filter(([, old, next]) => old !== next)
    .map(([name, old, next]) => `${name} ${next}, was ${old}`)
    .join('; ');
}

/** Numbers that moved, those that lie together and moved alike told as one. */
function renumbered(
  pairs: readonly (readonly [PrintedWire, PrintedWire])[]
): readonly Renumbered[] {
  const moved = pairs
    .map(([before, now]) => ({ old: before.number, by: now.number - before.number }))
    .filter(({ by }) => by !== 0)
    .sort((a, b) => a.old - b.old);
  return moved.reduce<Renumbered[]>((all, { old, by }) => {
    const last = all.at(-1);
    return last && last.by === by && last.last + 1 === old
      ? [...all.slice(0, -1), { ...last, last: old }]
      : [...all, { first: old, last: old, by }];
  }, []);
}

/** What has changed in the wiring since a print-out: wires added, removed, altered, and numbers that moved. */
export function changesSince(
  printed: readonly PrintedWire[],
  wires: readonly PrintedWire[]
): Changes {
  const before = new Map(printed.map((wire) => [keyOf(wire), wire]));
  const now = new Map(wires.map((wire) => [keyOf(wire), wire]));
  const told = ({ number, from, to }: PrintedWire, kind: Change['kind'], what = ''): Change => ({
    kind,
    number,
    from,
    to,
    what
  });
  const kept = wires.flatMap((wire): (readonly [PrintedWire, PrintedWire])[] => {
    const old = before.get(keyOf(wire));
    return old ? [[old, wire]] : [];
  });
  return {
    changes: [
      ...wires.filter((wire) => !before.has(keyOf(wire))).map((wire) => told(wire, 'added')),
      ...printed.filter((wire) => !now.has(keyOf(wire))).map((wire) => told(wire, 'removed')),
      ...kept.flatMap(([old, wire]) => {
        const what = whatChanged(old, wire);
        return what === '' ? [] : [told(wire, 'altered', what)];
      })
    ],
    renumbered: renumbered(kept)
  };
}
