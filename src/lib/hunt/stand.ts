import type { Fault, Yard } from '../yard';
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
  /** How likely each outcome of a test is where that is shown. */
  readonly sharesOf: (test: Test, shown: object) => readonly number[];
}

/** A moment as a place to test; what suspects show is worked out when it is asked for. */
export class MomentStand implements Stand {
  readonly tests: readonly Test[];
  private settling: Settling | undefined;
  private readonly settled: Settled[] = [];
  private readonly shares = new Map<Test, Map<object, readonly number[]>>();

  constructor(
    private readonly yard: Yard,
    private readonly moment: Moment,
    private readonly suspects: readonly Suspect[],
    private readonly shared: Shared
  ) {
    this.tests = testsIn(yard, moment);
  }

  of(suspect: number): Settled {
    return (this.settled[suspect] ??= this.find(suspect));
  }

  private find(suspect: number): Settled {
    const settling = this.begun();
    const fault = this.suspects[suspect]?.fault;
    return fault && settling.concerns(suspect) ? settling.of([fault]) : settling.plain;
  }

  with(faults: readonly Fault[]): Settled {
    return this.begun().of(faults);
  }

  private begun(): Settling {
    return (this.settling ??= new Settling(this.yard, this.moment, this.shared));
  }

  sharesOf(test: Test, shown: object): readonly number[] {
    const known = this.shares.get(test) ?? new Map<object, readonly number[]>();
    this.shares.set(test, known);
    const settled = shown as Settled;
    const about = test.byLive ? settled : settled.rest;
    const shares = known.get(about) ?? test.shares(settled);
    known.set(about, shares);
    return shares;
  }
}
