import { expect, test } from 'vitest';
import { groundOf } from '../../src/lib/checks';
import { hurtYard } from '../../src/lib/checks/gap/hurt';
import { soundOf } from '../../src/lib/checks/gap/sound';
import { faultsOf, type Fault, type Yard } from '../../src/lib/yard';
import { brute } from './brute';
import { momentsOf, yards } from './every-yard';

/** Which of how many parts of the yards is tried: one of them in each process. */
const [part = 0, parts = 1] = (process.env.PART ?? '0/1').split('/').map(Number);
const MINUTES = Number(process.env.MINUTES ?? 180);

/** The same order each time, as if drawn by lot: a run that is cut short has tried a fair share. */
const byLot = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => index).sort(
    (a, b) => ((a * 7919 + 13) % 104729) - ((b * 7919 + 13) % 104729)
  );

/** Faults of a yard under which the proof and brute force say different things. */
function mismatches(yard: Yard): { readonly tried: number; readonly wrong: readonly Fault[] } {
  const sound = soundOf(groundOf(yard));
  const all = faultsOf(yard);
  const wrong = all.filter((fault) => {
    const { proof } = hurtYard(sound, [fault]);
    const states = brute(yard, (scene) => ({ ...scene, faults: [fault] }), momentsOf(yard));
    return states.unsafe !== proof.unsafe || states.unsafeHome !== proof.unsafeHome;
  });
  return { tried: all.length, wrong };
}

test(
  'the proof equals brute force under every single fault of every yard up to 4+3',
  () => {
    const end = Date.now() + MINUTES * 60_000;
    const all = yards(4, 3);
    const seen = { yards: 0, faults: 0 };
    for (const index of byLot(all.length).filter((each) => each % parts === part)) {
      if (Date.now() > end) break;
      const yard = all[index] as Yard;
      const { tried, wrong } = mismatches(yard);
      expect(wrong, JSON.stringify(yard)).toEqual([]);
      seen.yards++;
      seen.faults += tried;
    }
    console.info(
      `${seen.faults} faults of ${seen.yards} yards (of ${all.length}) tried, none differs.`
    );
    expect(seen.yards).toBeGreaterThan(0);
  },
  (MINUTES + 5) * 60_000
);
