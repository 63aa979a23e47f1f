import { onlyOpens, type Fault, type Yard } from '../yard';
import { testsIn, type Test } from './kinds';
import type { Moment } from './moment';
import { Settling, type Settled, type Shared } from './settle';
import type { Suspect } from './suspects';

/** Where tests are made, and what each suspect, by its number, would show there. */
export interface Stand {
  readonly tests: readonly Test[];
  /** One object for all suspects that show the same. */
  readonly of: (suspect: number) => object;
  /** What several faults at once would show there. */
  readonly with: (faults: readonly Fault[]) => object;
  /** Whether a suspect surely shows there what the sound yard does. */
  readonly isBlindTo: (suspect: number) => boolean;
  /** How likely each outcome of a test is where that is shown. */
  readonly sharesOf: (test: Test, shown: object) => readonly number[];
}

/** What is the same for all tests of a moment; it is begun when it is first asked for. */
interface Begun {
  readonly tests: readonly Test[];
  readonly suspects: readonly Suspect[];
  readonly settling: () => Settling;
}

/** A moment as a place for some of its tests; what suspects show is worked out when it is asked for. */
class MomentStand implements Stand {
  readonly tests: readonly Test[];
  private readonly settled: Settled[] = [];
  private readonly shares = new Map<Test, Map<object, readonly number[]>>();

  constructor(
    private readonly begun: Begun,
    /** Whether its tests ask which roads are live. */
    private readonly byLive: boolean
  ) {
    this.tests = begun.tests.filter((test) => (test.byLive ?? false) === byLive);
  }

  of(suspect: number): Settled {
    return (this.settled[suspect] ??= this.find(suspect));
  }

  private find(suspect: number): Settled {
    const settling = this.begun.settling();
    const fault = this.begun.suspects[suspect]?.fault;
    const isSound =
      this.isBlindTo(suspect) || (this.isKnown(settling) && !settling.concerns(suspect));
    return this.with(fault && !isSound ? [fault] : []);
  }

  /** Whether all that suspects may show here is what they touch. */
  private isKnown({ isCutOff }: Settling): boolean {
    return isCutOff || !this.byLive;
  }

  with(faults: readonly Fault[]): Settled {
    const settling = this.begun.settling();
    return this.byLive ? settling.liveWith(faults) : settling.of(faults);
  }

  isBlindTo(suspect: number): boolean {
    const fault = this.begun.suspects[suspect]?.fault;
    if (!fault) return true;
    return this.byLive && onlyOpens(fault) && this.begun.settling().isCutOff;
  }

  sharesOf(test: Test, shown: object): readonly number[] {
    const known = this.shares.get(test) ?? new Map<object, readonly number[]>();
    this.shares.set(test, known);
    const shares = known.get(shown) ?? test.shares(shown as Settled);
    known.set(shown, shares);
    return shares;
  }
}

/** A moment as places to test: one for what is seen of the roads that are tried, one for roads that should be dead. */
export function standsAt(
  yard: Yard,
  moment: Moment,
  suspects: readonly Suspect[],
  shared: Shared
): readonly Stand[] {
  let settling: Settling | undefined;
  const begun: Begun = {
    tests: testsIn(yard, moment),
    suspects,
    settling: () => (settling ??= new Settling(yard, moment, shared))
  };
  return [false, true]
    .map((byLive) => new MomentStand(begun, byLive))
    .filter(({ tests }) => tests.length > 0);
}
