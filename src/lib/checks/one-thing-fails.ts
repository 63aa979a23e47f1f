import { faultWords, joinWords, type Yard } from '../yard';
import { faultCures } from './fault-cures';
import { faultRow, inOrder, type FaultTable } from './fault-row';
import type { Finding } from './finding';
import { faultSteps, type FaultProofs, type Progress } from './gap/faults';
import { groundOf, statesOf, type Ground } from './gap/proof';
import { countText, statesWords } from './gap/words';

function summaryOf(ground: Ground, { states, unsafe, faults, untried }: FaultProofs): Finding {
  const harmless = faults.filter(({ breach }) => !breach).length;
  const each = statesOf(ground);
  const ways = states / each.all;
  return {
    grade: untried.length > 0 ? 'think' : 'fine',
    what:
      `Every state was covered with no fault and with each single fault: ${statesWords(each)}, ` +
      `× ${countText(ways)} for no fault or one of ${countText(ways - 1n)}.`,
    where: [],
    amount: `${countText(unsafe)} of ${countText(states)} states are unsafe, pin home or out`,
    why: `${harmless} of ${faults.length} faults that change a path open no new end with the pin home.`,
    cure:
      untried.length > 0
        ? `Not tried, for too many ways lead to a road: ${joinWords(untried.map(faultWords), 'and')}. Try these with a lamp, or have the pin interlock the stabling roads.`
        : 'Nothing to do.',
    source: 'the engine'
  };
}

/**
 * The gap proof under every single fault, step by step; at the end the faults that open an end with
 * the pin home, those first which nothing shows.
 */
export function* faultTable(yard: Yard): Generator<Progress, FaultTable> {
  const ground = groundOf(yard);
  const proofs = yield* faultSteps(ground);
  const cureOf = faultCures(ground);
  const rows = proofs.faults.flatMap(({ breach, notice, fault }) => {
    const faults = [fault];
    return breach ? [faultRow(yard, { faults, breach, notice, cure: cureOf(faults, breach) })] : [];
  });
  return { rows: inOrder(rows), summary: summaryOf(ground, proofs) };
}
