import { faultsOf, faultWords, type Fault } from '../../yard';
import { daysOf, noticeOf, type Notice } from './everyday';
import { hurtYard } from './hurt';
import { oddness, statesOf, type Breach, type GapProof, type Ground } from './proof';
import { result } from '../result';
import { soundOf } from './sound';

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
export const changesPaths = (fault: Fault): boolean => !('highOhms' in fault);

const sameEnd = (a: Breach) => (b: Breach) => a.road === b.road && a.end === b.end;

/** The plainest state with the pin home at an end that these do not open with the pin home. */
export function newBreach({ breaches }: GapProof, known: readonly Breach[]): Breach | undefined {
  const old = known.filter(({ pin }) => pin === 'home');
  const [first] = breaches
    .filter((each) => each.pin === 'home' && !old.some(sameEnd(each)))
    .sort((a, b) => oddness(a) - oddness(b));
  return first;
}

/** How far a long proof is. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}

/**
 * The same proof under every single fault of the yard, step by step: after each fault it says how far
 * it is, so that a caller can show it and can stop.
 */
export function* faultSteps(ground: Ground): Generator<Progress, FaultProofs> {
  const sound = soundOf(ground);
  const good = sound.proof;
  const days = daysOf(sound);
  const all = faultsOf(ground.yard);
  const changing = all.filter(changesPaths);
  const faults: FaultProof[] = [];
  for (const fault of changing) {
    const hurt = hurtYard(sound, [fault]);
    const { proof } = hurt;
    const breach = newBreach(proof, good.breaches);
    faults.push({
      fault,
      words: faultWords(fault),
      proof,
      more: proof.unsafeHome - good.unsafeHome,
      breach,
      notice: breach ? noticeOf(hurt, days) : { dead: [], live: [] }
    });
    yield { done: faults.length, of: changing.length };
  }
  const same = BigInt(all.length - changing.length);
  return {
    good,
    faults,
    states: statesOf(ground).all * BigInt(1 + all.length),
    unsafe: faults.reduce((sum, { proof }) => sum + proof.unsafe, good.unsafe * (1n + same))
  };
}

/** The same proof under every single fault of the yard. */
export const proveFaults = (ground: Ground): FaultProofs => result(faultSteps(ground));
