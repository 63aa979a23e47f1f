import { expect, test } from 'vitest';
import { groundOf } from '../../src/lib/checks';
import { hurtYard } from '../../src/lib/checks/gap/hurt';
import { soundOf } from '../../src/lib/checks/gap/sound';
import { faultsOf, type Fault, type Yard } from '../../src/lib/yard';
import { brute } from './brute';
import { momentsOf, yards } from './every-yard';
import { MINUTES, share } from './shares';

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
    const all = yards(4, 3);
    const seen = { yards: 0, faults: 0 };
    for (const yard of share(all)) {
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
