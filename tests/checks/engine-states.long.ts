import { expect, test } from 'vitest';
import { drawn, engineVolts, proved, WIRE_VOLTS, type State } from './engine-states';
import { yards } from './every-yard';
import { MINUTES, share } from './shares';

/** States with a fault that the engine is asked of in each yard, of many thousands. */
const FAULTY = 200;

const differs = (state: State): boolean =>
  state.faults.length === 0
    ? engineVolts(state) > 1e-6 !== proved(state)
    : engineVolts(state) > WIRE_VOLTS && !proved(state);

test(
  'the engine agrees with the proof in one state of a hundred of every yard up to 4+3',
  () => {
    const seen = { yards: 0, sound: 0, faulty: 0 };
    for (const yard of share(yards(4, 3))) {
      const sound = drawn([yard], false);
      const faulty = drawn([yard], true, FAULTY);
      expect([...sound, ...faulty].filter(differs), JSON.stringify(yard)).toEqual([]);
      seen.yards++;
      seen.sound += sound.length;
      seen.faulty += faulty.length;
    }
    console.info(
      `The engine, asked of ${seen.sound} states without a fault and ${seen.faulty} with one, of ${seen.yards} yards: none differs.`
    );
    expect(seen.yards).toBeGreaterThan(0);
  },
  (MINUTES + 5) * 60_000
);
