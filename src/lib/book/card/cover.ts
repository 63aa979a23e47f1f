import type { Progress } from '../../checks';
import { roads, type Fault, type Yard } from '../../yard';
import { differs, type TestLine } from './line';
import type { CardReader } from './reader';

/** Which lines show a fault: all that are known to. */
interface Shown {
  readonly fault: Fault;
  readonly by: readonly TestLine[];
}

/** A fault which shows only while a wire is open, and a line that shows it then. */
export interface Hidden {
  readonly fault: Fault;
  readonly line: TestLine;
}

/** The lines of a card that are enough, and the faults that none of them shows as the yard stands. */
export interface Cover {
  readonly chosen: ReadonlySet<TestLine>;
  readonly hidden: readonly Hidden[];
  readonly missed: readonly Fault[];
}

/** What is to be covered. */
interface Task {
  readonly lines: readonly TestLine[];
  readonly faults: readonly Fault[];
  readonly reader: CardReader;
  /** Whether every line is on the card. */
  readonly whole: boolean;
}

/** The roads that a fault names. */
const roadsIn = (fault: Fault): readonly string[] =>
  Object.values(fault)
    .flat()
    .flatMap((value) => (typeof value === 'string' ? value.split(/[ -]/) : []));

/** Kinds with most places. They are asked last: lines chosen for the other kinds show nearly all of them. */
const MANY = ['stuckOpen', 'highOhms', 'halfHome', 'crossed'];

const isOfMany = (fault: Fault): boolean => MANY.some((key) => key in fault);

/** Asks which lines show a fault, each line once. */
class Showing {
  readonly #expected = new Map<TestLine, number>();
  readonly #names: ReadonlySet<string>;
  readonly #reader: CardReader;

  constructor(yard: Yard, reader: CardReader) {
    this.#reader = reader;
    this.#names = new Set(roads(yard));
  }

  shows = (line: TestLine, fault: Fault): boolean =>
    differs(this.#expectedOf(line), this.#reader.reads(line, fault));

  #expectedOf(line: TestLine): number {
    const known = this.#expected.get(line) ?? this.#reader.reads(line);
    this.#expected.set(line, known);
    return known;
  }

  /** Lines of the roads that a fault names, all others, those that open a wire. */
  #grouped(lines: Iterable<TestLine>, fault: Fault): readonly (readonly TestLine[])[] {
    const named = new Set(roadsIn(fault).filter((name) => this.#names.has(name)));
    const groups: [TestLine[], TestLine[], TestLine[]] = [[], [], []];
    for (const line of lines) {
      const isNear = line.road !== undefined && named.has(line.road);
      groups[line.opens ? 2 : isNear ? 0 : 1].push(line);
    }
    return groups;
  }

  /** The first of these lines that shows a fault. */
  first = (lines: Iterable<TestLine>, fault: Fault): TestLine | undefined =>
    this.#grouped(lines, fault)
      .flat()
      .find((line) => this.shows(line, fault));

  /** The lines that show a fault, of the first group in which one does. */
  all(lines: Iterable<TestLine>, fault: Fault): readonly TestLine[] {
    for (const some of this.#grouped(lines, fault)) {
      const by = some.filter((line) => this.shows(line, fault));
      if (by.length > 0) return by;
    }
    return [];
  }
}

/** The line that shows most of these faults; of equals the first. */
function best(lines: readonly TestLine[], open: readonly Shown[]): TestLine | undefined {
  const counts = new Map<TestLine, number>();
  for (const { by } of open) for (const line of by) counts.set(line, (counts.get(line) ?? 0) + 1);
  return lines.reduce<TestLine | undefined>(
    (most, line) =>
      (counts.get(line) ?? 0) > (most === undefined ? 0 : (counts.get(most) ?? 0)) ? line : most,
    undefined
  );
}

/** Greedy set cover: again and again the line that shows most of what nothing shows yet. */
function greedy(lines: readonly TestLine[], shown: readonly Shown[]): readonly TestLine[] {
  const chosen: TestLine[] = [];
  let open = shown.filter(({ by }) => by.length > 0);
  for (let line = best(lines, open); line; line = best(lines, open)) {
    const next = line;
    chosen.push(next);
    open = open.filter(({ by }) => !by.includes(next));
  }
  return chosen;
}

/**
 * Chooses lines which show every fault that any line shows: greedy set cover over fault × line.
 *
 * A fault that a chosen line shows is done. Of the others it is asked which lines of the roads that
 * they name show them, and all other lines where none does; those that open a wire last. Then the
 * line that shows most is chosen, until nothing is left. Kinds with most places come after the rest. A
 * line counts only where the engine has read it with the fault in and found it changed by more than a
 * meter's error.
 */
export function* coverSteps(
  yard: Yard,
  { lines, faults, reader, whole }: Task
): Generator<Progress, Cover> {
  const showing = new Showing(yard, reader);
  const chosen = new Set(lines.filter(({ always }) => whole || always));
  const missed: Fault[] = [];
  const hidden: Hidden[] = [];
  let done = 0;
  for (const batch of [faults.filter((each) => !isOfMany(each)), faults.filter(isOfMany)]) {
    const open: Shown[] = [];
    for (const fault of batch) {
      const line = showing.first(chosen, fault);
      const by = line ? [line] : whole ? [] : showing.all(lines, fault);
      if (by.length === 0) missed.push(fault);
      else if (!line) open.push({ fault, by });
      if (line?.opens) hidden.push({ fault, line });
      done += 1;
      yield { done, of: faults.length };
    }
    for (const line of greedy(lines, open)) chosen.add(line);
    for (const { fault, by } of open) {
      const line = by.find((each) => chosen.has(each));
      if (line && by.every(({ opens }) => opens)) hidden.push({ fault, line });
    }
  }
  return { chosen, hidden, missed };
}
