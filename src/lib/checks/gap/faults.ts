import { faultsOf, faultWords, type Fault } from '../../yard';
import { noticeOf, type Notice } from './everyday';
import { proveGap, statesOf, type Breach, type GapProof, type Ground } from './proof';

/** What one fault does to the proof. */
export interface FaultProof {
  readonly fault: Fault;
  readonly words: string;
  readonly proof: GapProof;
  /** Unsafe states with the pin home, more than without the fault; less than 0 when it takes some away. */
  readonly more: bigint;
  /** The state with the pin home that it newly lets happen. */
  readonly breach: Breach | undefined;
  readonly notice: Notice;
}

export interface FaultProofs {
  readonly good: GapProof;
  readonly faults: readonly FaultProof[];
  /** All states with no fault or one: states of the yard × (1 + single faults). */
  readonly states: bigint;
  readonly unsafe: bigint;
}

/** A bad joint conducts still: it takes volts and changes no path. */
const changesPaths = (fault: Fault): boolean => !('highOhms' in fault);

const sameEnd = (a: Breach) => (b: Breach) => a.road === b.road && a.end === b.end;

/** The same proof under every single fault of the yard. */
export function proveFaults(ground: Ground): FaultProofs {
  const good = proveGap(ground);
  const known = good.breaches.filter(({ pin }) => pin === 'home');
  const all = faultsOf(ground.yard);
  const faults = all.filter(changesPaths).map((fault): FaultProof => {
    const proof = proveGap(ground, [fault]);
    const breach = proof.breaches.find((each) => each.pin === 'home' && !known.some(sameEnd(each)));
    return {
      fault,
      words: faultWords(fault),
      proof,
      more: proof.unsafeHome - good.unsafeHome,
      breach,
      notice: breach ? noticeOf(ground, [fault]) : { dead: [], live: [] }
    };
  });
  const bad = BigInt(all.length - faults.length);
  return {
    good,
    faults,
    states: statesOf(ground).all * BigInt(1 + all.length),
    unsafe: faults.reduce((sum, { proof }) => sum + proof.unsafe, good.unsafe * (1n + bad))
  };
}
