import { faultsOf, type Fault } from '../../yard';
import { daysOf, noticeOf, type Day, type Notice } from './everyday';
import { changesPaths, newBreach, type Progress } from './faults';
import { hurtYard, type HurtYard } from './hurt';
import { statesOf, type Breach, type GapProof, type Ground } from './proof';
import { soundOf, type Sound } from './sound';

/** Two faults that are worse together than each alone. */
export interface PairProof {
  readonly faults: readonly [Fault, Fault];
  readonly breach: Breach;
  readonly notice: Notice;
}

export interface PairProofs {
  /** Every two faults of the yard. */
  readonly pairs: bigint;
  readonly states: bigint;
  readonly unsafe: bigint;
  /** Pairs that open an end which neither fault opens alone. */
  readonly opening: readonly PairProof[];
  /** Pairs that open an end with nothing to show it in everyday use, though each fault that opens one alone shows. */
  readonly hiding: readonly PairProof[];
}

/** A fault by itself. */
interface Alone {
  readonly proof: GapProof;
  readonly breach: Breach | undefined;
  readonly shows: boolean;
}

const shows = ({ dead, live }: Notice): boolean => dead.length + live.length > 0;

const pairsOf = (count: number): bigint => (BigInt(count) * BigInt(count - 1)) / 2n;

/** How many pairs of faults that change a path have to be tried. */
export const pairCount = ({ yard }: Ground): number =>
  Number(pairsOf(faultsOf(yard).filter(changesPaths).length));

/** Sorts pairs by why they are worse than each fault alone. */
class Worse {
  readonly opening: PairProof[] = [];
  readonly hiding: PairProof[] = [];
  readonly #days: readonly Day[];

  constructor(readonly sound: Sound) {
    this.#days = daysOf(sound);
  }

  alone(fault: Fault): Alone {
    const hurt = hurtYard(this.sound, [fault]);
    const breach = newBreach(hurt.proof, this.sound.proof.breaches);
    return {
      proof: hurt.proof,
      breach,
      shows: breach !== undefined && shows(noticeOf(hurt, this.#days))
    };
  }

  take(faults: PairProof['faults'], hurt: HurtYard, alone: readonly Alone[]): void {
    const good = this.sound.proof.breaches;
    const known = [...good, ...alone.flatMap(({ proof }) => proof.breaches)];
    const opened = newBreach(hurt.proof, known);
    const breach = opened ?? newBreach(hurt.proof, good);
    if (!breach) return;
    const notice = noticeOf(hurt, this.#days);
    if (opened) this.opening.push({ faults, breach, notice });
    else if (!shows(notice) && alone.every((each) => !each.breach || each.shows)) {
      this.hiding.push({ faults, breach, notice });
    }
  }
}

/**
 * The gap proof under every two faults of the yard, step by step. A bad joint changes no path: with
 * it each other fault counts as it does alone.
 */
export function* pairSteps(ground: Ground): Generator<Progress, PairProofs> {
  const sound = soundOf(ground);
  const worse = new Worse(sound);
  const all = faultsOf(ground.yard);
  const faults = all.filter(changesPaths).map((fault) => ({ fault, ...worse.alone(fault) }));
  const of = pairCount(ground);
  const joints = all.length - faults.length;
  const single = faults.reduce((sum, { proof }) => sum + proof.unsafe, 0n);
  let unsafe = BigInt(joints) * single + pairsOf(joints) * sound.proof.unsafe;
  let done = 0;
  for (const [index, one] of faults.entries()) {
    for (const other of faults.slice(index + 1)) {
      const pair = [one.fault, other.fault] as const;
      const hurt = hurtYard(sound, pair);
      unsafe += hurt.proof.unsafe;
      worse.take(pair, hurt, [one, other]);
      yield { done: ++done, of };
    }
  }
  const pairs = pairsOf(all.length);
  const { opening, hiding } = worse;
  return { pairs, states: statesOf(ground).all * pairs, unsafe, opening, hiding };
}
