import { faultsOf, faultWords, type Fault } from '../../yard';
import { daysOf, noticeOf, type Notice } from './everyday';
import { hurtYard, type HurtYard } from './hurt';
import { TooManyError } from './live';
import { oddness, statesOf, type Breach, type GapProof, type Ground } from './proof';
import { result } from '../result';
import { soundOf, type Sound } from './sound';

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
  /** Faults that make a road depend on its switches in too many ways to try: nothing is known of them. */
  readonly untried: readonly Fault[];
  /** All states with no fault or one that was tried: states of the yard × (1 + those faults). */
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

/** A yard with a fault; undefined when there are too many ways to try. */
function tried(sound: Sound, fault: Fault): HurtYard | undefined {
  try {
    return hurtYard(sound, [fault]);
  } catch (error) {
    if (error instanceof TooManyError) return undefined;
    throw error;
  }
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
  const untried: Fault[] = [];
  for (const fault of changing) {
    const hurt = tried(sound, fault);
    yield { done: faults.length + untried.length + 1, of: changing.length };
    if (!hurt) {
      untried.push(fault);
      continue;
    }
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
  }
  const same = BigInt(all.length - changing.length);
  return {
    good,
    faults,
    untried,
    states: statesOf(ground).all * BigInt(1 + all.length - untried.length),
    unsafe: faults.reduce((sum, { proof }) => sum + proof.unsafe, good.unsafe * (1n + same))
  };
}

/** The same proof under every single fault of the yard. */
export const proveFaults = (ground: Ground): FaultProofs => result(faultSteps(ground));
