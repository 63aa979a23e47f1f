import { joinWords, sentence, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { breachScene } from './gap/board';
import type { Notice } from './gap/everyday';
import { proveFaults, type FaultProof, type FaultProofs } from './gap/faults';
import { groundOf, type Breach } from './gap/proof';
import { breachWords, countText } from './gap/words';

/** Whether somebody who works the yard as usual would notice. */
function noticeWords({ dead, live }: Notice): string {
  if (dead.length === 0 && live.length === 0) return 'In everyday use nothing shows it.';
  const parts = [
    ...(dead.length > 0 ? [`${joinWords(dead, 'and')} will not run when it should`] : []),
    ...(live.length > 0 ? [`${joinWords(live, 'and')} runs when it should not`] : [])
  ];
  return sentence(`it shows in everyday use: ${joinWords(parts, 'and')}`);
}

/** The test that finds it, with a test lamp and no loco in the yard. */
const testWords = (yard: Yard, breach: Breach): string =>
  `Test: ${breachWords(yard, breach)}. A test lamp across the rails of ${breach.road} must stay dark.`;

function faultFinding(
  yard: Yard,
  { fault, words, breach, more, notice }: FaultProof,
  at: Breach
): Finding {
  return {
    grade: notice.dead.length > 0 ? 'think' : 'must fix',
    what: `${sentence(words)} Then road ${at.road} can be live while its ${at.end} end faces nothing.`,
    where: [at.road],
    amount: `${countText(more)} unsafe states more with the pin home`,
    why: noticeWords(notice),
    cure: `${testWords(yard, at)} A stop at that end, closed whenever nothing faces it, takes the danger away.`,
    source: 'the engine',
    ...(breach ? { board: { yard, scene: breachScene(yard, breach, [fault]) } } : {})
  };
}

const countFinding = ({ states, unsafe, faults }: FaultProofs): Finding => ({
  grade: 'fine',
  what: 'Every state was covered with no fault and with each single fault.',
  where: [],
  amount: `${countText(unsafe)} of ${countText(states)} states are unsafe, pin home or out`,
  why: `${faults.filter(({ breach }) => !breach).length} of ${faults.length} faults that change a path open no new end with the pin home.`,
  cure: 'Nothing to do.',
  source: 'the engine'
});

/** The gap proof under every single fault: what it lets happen, whether it shows, which test finds it. */
export const oneThingFails: Check = {
  id: 'one-thing-fails',
  title: 'What if one thing fails?',
  run(yard) {
    const proofs = proveFaults(groundOf(yard));
    return [
      ...proofs.faults.flatMap((each) =>
        each.breach ? [faultFinding(yard, each, each.breach)] : []
      ),
      countFinding(proofs)
    ];
  }
};
