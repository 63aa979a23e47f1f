import { once, type Fault, type Yard } from '../yard';
import { boardOf, type Board } from './board';
import { pairsThat } from './explain';
import type { Counsel } from './counsel';
import { AGAINST, againstOf, beginHunt, outcomeIndex, type Told } from './hunt';
import { plain } from './looks';
import { bestOf, inseparable, worthIn, type State } from './next';
import type { Test } from './kinds';
import type { Stand } from './stand';
import type { Suspect } from './suspects';

/** What may be the matter where two faults are in: a pair, or one that hides what the other shows. */
interface Cause {
  readonly suspects: readonly Suspect[];
  readonly faults: readonly Fault[];
  readonly weight: number;
  /** What it shows at each stand, once that was asked. */
  readonly shown: Map<Stand, object>;
}

/** How likely one fault is to hide another, against any pair. Source: common practice. */
const HIDING = 0.1;
/** Most pairs tried for what is seen, and most causes by which a test is chosen. */
const MOST_TRIED = 1000;
const IN_MIND = 60;

const causeOf = (suspects: readonly Suspect[], share: number): Cause => ({
  suspects,
  faults: suspects.flatMap(({ fault }) => fault ?? []),
  weight: suspects.reduce((product, { prior }) => product * prior, share),
  shown: new Map()
});

function shownOf({ faults, shown }: Cause, stand: Stand): object {
  const now = shown.get(stand) ?? stand.with(faults);
  shown.set(stand, now);
  return now;
}

/** Faults that hide any other, and pairs that show all that is seen one or the other. */
function apart(yard: Yard, looks: readonly Told[]): readonly Cause[] {
  const board = boardOf(yard);
  const hunt = { ...beginHunt(yard, 0), told: looks };
  const alone = board.suspects.filter(
    ({ fault }, number) => fault && againstOf(hunt, board, number).length === 0
  );
  return [
    ...alone.map((suspect) => causeOf([suspect], HIDING)),
    ...pairsThat('apart', hunt, MOST_TRIED).pairs.map((pair) => causeOf(pair, 1))
  ];
}

/** Pairs that show it only together. */
const together = (yard: Yard, looks: readonly Told[]): readonly Cause[] =>
  pairsThat('together', { ...beginHunt(yard, 0), told: looks }).pairs.map((pair) =>
    causeOf(pair, 1)
  );

/** The same work, done once for what is seen of a yard. */
function onceFor(work: typeof apart): typeof apart {
  const before = once<Yard, Map<string, readonly Cause[]>>(() => new Map());
  return (yard, looks) => {
    const key = looks.map(({ outcome }) => outcome).join();
    const causes = before(yard).get(key) ?? work(yard, looks);
    before(yard).set(key, causes);
    return causes;
  };
}

/** Where all causes of one kind are out, the next kind is thought of. */
const kinds = [onceFor(apart), onceFor(together)];

/** A stand at which each number is a cause. */
const standFor = (stand: Stand, causes: readonly Cause[]): Stand => ({
  tests: stand.tests,
  of: (number) => shownOf(causes[number] as Cause, stand),
  with: (faults) => stand.with(faults),
  isBlindTo: () => false,
  sharesOf: (test, shown) => stand.sharesOf(test, shown)
});

const needsInstrument = ({ kind }: Test): boolean => kind !== 'round' && !plain.includes(kind);

/** A hunt for two faults that are in at once. */
export interface TwoHunt {
  readonly yard: Yard;
  /** What every look shows. */
  readonly looks: readonly Told[];
  /** The readings besides. */
  readonly made: readonly Told[];
  /** Names of suspects that it is not. */
  readonly out: readonly string[];
}

/** What explains every reading of two faults at once. */
export class AtOnce implements Counsel {
  private readonly board: Board;
  private readonly state: State;
  private readonly causes: readonly Cause[];
  readonly open: number;

  constructor({ yard, looks, made, out }: TwoHunt) {
    this.board = boardOf(yard);
    const fit = (causes: readonly Cause[]): readonly Cause[] =>
      causes
        .filter(({ suspects }) => !suspects.some(({ name }) => out.includes(name)))
        .map((cause) => this.after(cause, made))
        .filter(({ weight }) => weight > 0);
    const found = kinds.reduce<readonly Cause[]>(
      (before, causesOf) => (before.length > 0 ? before : fit(causesOf(yard, looks))),
      []
    );
    this.causes = [...found].sort((a, b) => b.weight - a.weight);
    this.open = likeliest(this.causes).length;
    this.state = this.stateOf(this.causes.slice(0, IN_MIND), made);
  }

  best(): { readonly test: Test; readonly bits: number } | undefined {
    return bestOf(this.state, () => true);
  }

  names(): readonly Suspect[] {
    return likeliest(inseparable(this.state).flatMap((number) => this.causes[number] ?? []));
  }

  worth(id: string): number {
    const [stand, test] = this.board.find(id);
    return worthIn(this.state, standFor(stand, this.causes), test);
  }

  private after(cause: Cause, made: readonly Told[]): Cause {
    const shares = made.map(({ test: id, outcome }) => {
      const [stand, test] = this.board.find(id);
      return stand.sharesOf(test, shownOf(cause, stand))[outcomeIndex(test, outcome)] ?? 0;
    });
    const isOut = shares.some((share) => share < AGAINST);
    const weight = shares.reduce((product, share) => product * share, cause.weight);
    return { ...cause, weight: isOut ? 0 : weight };
  }

  private stateOf(causes: readonly Cause[], made: readonly Told[]): State {
    return {
      board: this.board,
      stands: this.board.stands
        .filter(({ tests }) => tests.some(needsInstrument))
        .map((stand) => standFor(stand, causes)),
      weights: causes.map(({ weight }) => weight),
      alive: causes.map((_, number) => number),
      wrong: 0,
      tired: new Set(made.map(({ test }) => test))
    };
  }
}

/** The suspects of these causes by their weight in all of them. */
function likeliest(causes: readonly Cause[]): readonly Suspect[] {
  const sums = new Map<Suspect, number>();
  for (const { suspects, weight } of causes)
    for (const each of suspects) sums.set(each, (sums.get(each) ?? 0) + weight);
  return [...sums].sort(([, a], [, b]) => b - a).map(([suspect]) => suspect);
}
