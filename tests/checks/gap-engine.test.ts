import { describe, expect, test } from 'vitest';
import { drawn, engineVolts, proved, WIRE_VOLTS, yardsOf } from './engine-states';

const yards = yardsOf(4, 3);

describe('one state in a hundred, asked of the engine', () => {
  const good = drawn(yards, false, 1000);
  test(`${good.length} states without a fault: current flows exactly where the proof says`, () => {
    const differ = good.filter((state) => engineVolts(state) > 1e-6 !== proved(state));
    expect(differ.map(({ moment, setting }) => ({ moment, setting }))).toEqual([]);
  }, 240_000);

  const faulty = drawn(yards, true, 100);
  test(`${faulty.length} states with one fault: where the proof says safe, no loco has volts`, () => {
    const differ = faulty.filter((state) => engineVolts(state) > WIRE_VOLTS && !proved(state));
    expect(differ.map(({ faults, moment, setting }) => ({ faults, moment, setting }))).toEqual([]);
  }, 240_000);
});
