import { once, placed, sidesOf, wire, type Part, type Placed, type Run, type Yard } from '../yard';

/** A piece of wire to cut, from terminal to terminal. */
export interface Wire {
  /** Its number in the book. */
  readonly number: number;
  readonly from: string;
  readonly to: string;
  readonly job: Run['job'];
  /** The road it serves; wires of the whole yard have none. */
  readonly road: string | undefined;
  readonly size: string;
  /** As laid, m. */
  readonly lengthM: number;
  /** The run it is a piece of. */
  readonly run: string;
}

/** More to cut than is laid: a share of the length, and ends to strip and to move, m. Source: common practice. */
const ALLOWANCE = { share: 0.1, ends: 0.1 };

/** Length to cut, m, to the next 0.05 m. */
export const cutM = ({ lengthM }: Pick<Wire, 'lengthM'>): number =>
  Math.ceil((lengthM * (1 + ALLOWANCE.share) + ALLOWANCE.ends) / 0.05 - 1e-9) * 0.05;

/** Names of the two sides of what hangs from a lamp's wire, that of the supply first. */
const lampSides: Partial<Readonly<Record<Part['kind'], readonly [string, string]>>> = {
  'lamp pole': ['supply side', 'lamp side'],
  resistor: ['supply side', 'lamp side'],
  lamp: ['+', '-'],
  'lamp guard': ['return side', 'lamp side']
};

/** A terminal: a side of a part, a tag, a rail, a terminal of a supply. */
export const terminal = (part: Part, end: 0 | 1): string =>
  `${part.id}, ${(lampSides[part.kind] ?? sidesOf(part))[end]}`;

/** The parts of a run that have terminals, in the order in which the current from the feed meets them. */
const fixtures = (run: Run): readonly Placed[] => placed(run).filter(({ kind }) => kind !== 'wire');

/** A return run comes from its rails, so that a contact's supply side is met last. */
const ends = (run: Run, part: Part): readonly [string, string] =>
  run.job === 'return'
    ? [terminal(part, 1), terminal(part, 0)]
    : [terminal(part, 0), terminal(part, 1)];

/** Nodes that are lugs of a part: there is no tag beside it. */
function lugs(runs: readonly Run[]): ReadonlyMap<string, string> {
  return new Map(
    runs.flatMap((run): (readonly [string, string])[] => {
      const [first] = fixtures(run);
      if (!first) return [];
      const isLug = (run.job === 'feed' && run.road !== undefined) || first.kind === 'lamp';
      return isLug ? [[run.from, ends(run, first)[0]]] : [];
    })
  );
}

const BEHIND = 'behind ';

/**
 * The pieces between a run's terminals; its one wire is shared out evenly among them. Contacts that sit
 * side by side have none between them.
 */
function pieces(
  run: Run,
  yard: Yard,
  lug: ReadonlyMap<string, string>
): readonly Omit<Wire, 'number'>[] {
  const at = (stop: string) =>
    stop.startsWith(BEHIND) ? `${stop.slice(BEHIND.length)}, rail side` : (lug.get(stop) ?? stop);
  const stops = [run.from, ...fixtures(run).flatMap((part) => ends(run, part)), run.to].map(at);
  const gaps = Array.from({ length: stops.length / 2 }, (_, index) => ({
    from: stops[2 * index] as string,
    to: stops[2 * index + 1] as string
  })).filter(({ from, to }) => from !== to);
  const laid = run.parts.find((part) => part.wire)?.wire ?? { ...yard.wires.link, lengthM: 0 };
  return gaps.map((gap) => ({
    ...gap,
    job: run.job,
    road: run.road,
    size: laid.size,
    lengthM: laid.lengthM / gaps.length,
    run: run.id
  }));
}

/** Every wire of a yard, numbered in the order in which one lays them. Rail joiners are no wires. */
export const wiresOf = once((yard: Yard): readonly Wire[] => {
  const runs = wire(yard).filter(({ id }) => !/^(feed|return) joiner /.test(id));
  const lug = lugs(runs);
  return runs
    .flatMap((run) => pieces(run, yard, lug))
    .map((piece, index) => ({ number: index + 1, ...piece }));
});
