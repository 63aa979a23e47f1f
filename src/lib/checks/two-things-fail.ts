import { sentence, type Yard } from '../yard';
import { faultCures } from './fault-cures';
import { faultRow, inOrder, type FaultTable } from './fault-row';
import type { Finding } from './finding';
import type { Progress } from './gap/faults';
import { pairCount, pairSteps, type PairProofs } from './gap/pairs';
import { groundOf, statesOf, type Ground } from './gap/proof';
import { countText, statesWords } from './gap/words';

/** Most pairs of faults that are tried: some seconds' work. */
const MOST_PAIRS = 8000;

/** Why a yard's pairs of faults are not tried; undefined where they are. */
export function tooManyPairs(yard: Yard): string | undefined {
  const count = pairCount(groundOf(yard));
  if (count <= MOST_PAIRS) return undefined;
  return (
    `Two faults at once are tried in small yards only: up to ${countText(BigInt(MOST_PAIRS))} pairs of faults. ` +
    `This yard has ${countText(BigInt(count))} pairs that change a path, and to try them all would take too long.`
  );
}

/** How many pairs of a kind there are, and what they do. */
const countWords = ({ length }: readonly unknown[], one: string, many: string): string =>
  length > 1 ? `${length} pairs ${many}` : `${length === 1 ? '1' : 'no'} pair ${one}`;

const summaryOf = (
  ground: Ground,
  { pairs, states, unsafe, opening, hiding }: PairProofs
): Finding => ({
  grade: 'fine',
  what: `Every state was covered with each two of the faults: ${statesWords(statesOf(ground))}, × ${countText(pairs)} pairs of faults.`,
  where: [],
  amount: `${countText(unsafe)} of ${countText(states)} states are unsafe, pin home or out`,
  why: sentence(
    `${countWords(opening, 'opens', 'open')} an end with the pin home that neither fault opens alone, and ` +
      `${countWords(hiding, 'hides', 'hide')} what would show with one of them alone`
  ),
  cure: 'Nothing to do.',
  source: 'the engine'
});

/**
 * The gap proof under every two faults at once, step by step; at the end the pairs that are worse than
 * each fault alone.
 */
export function* pairTable(yard: Yard): Generator<Progress, FaultTable> {
  const ground = groundOf(yard);
  const proofs = yield* pairSteps(ground);
  const worse = [...proofs.opening, ...proofs.hiding];
  const cureOf = faultCures(ground);
  return {
    rows: inOrder(
      worse.map((each) => faultRow(yard, { ...each, cure: cureOf(each.faults, each.breach) }))
    ),
    summary: summaryOf(ground, proofs)
  };
}
