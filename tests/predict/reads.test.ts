import { describe, expect, test } from 'vitest';
import { asked, hides } from '../../src/lib/predict';
import type { Edit } from '../../src/lib/yard';
import { answers, questionOf } from './build';

/** The one answer on road B, off, with the knob at full. */
const answerOf = (
  meter: string,
  options: string[],
  edits: Edit[],
  extra: Parameters<typeof answers>[1]['scene'] = {}
) =>
  answers(
    { do: { edits }, reads: { meter, options } },
    { scene: { controller: 1, locos: { Heron: 'B' }, ...extra } }
  )[`meter ${meter}`];

const across: Edit = { volts: ['toggle B panel side', 'toggle B rail side'] };

describe('reads: the option nearest to the engine’s figure', () => {
  test('volts across the open switch with a loco on the road: 12 V', () => {
    expect(answerOf('volts', ['0 V', '6 V', '12 V'], [across])).toBe('12 V');
  });

  test('the same, road empty: 0 V', () => {
    expect(answerOf('volts', ['0 V', '6 V', '12 V'], [across], { locos: {} })).toBe('0 V');
  });

  test('an ammeter, in A or mA', () => {
    const edits: Edit[] = [{ meter: 'out', in: 'feed dropper A' }];
    const scene = { locos: { Plover: 'A' }, switches: { A: true }, controller: 0.5 };
    expect(answerOf('out', ['0 A', '0.18 A', '0.36 A'], edits, scene)).toBe('0.18 A');
    expect(answerOf('out', ['0 mA', '180 mA'], edits, scene)).toBe('180 mA');
  });

  test('ohms, with the supply off', () => {
    const edits: Edit[] = [{ ohms: ['feed', 'feed rail B'] }];
    const off = { supply: 'off' as const };
    expect(answerOf('ohms', ['0 Ω', '12 Ω', 'open'], edits, off)).toBe('open');
    const on = { ...off, switches: { B: true } };
    expect(answerOf('ohms', ['0 Ω', '12 Ω', 'open'], edits, on)).toBe('0 Ω');
  });

  test('with a minus among the options the way of the probes counts', () => {
    const west = { controller: -1 };
    expect(answerOf('volts', ['12 V', '0 V', '-12 V'], [across], west)).toBe('-12 V');
    expect(answerOf('volts', ['12 V', '0 V'], [across], west)).toBe('12 V');
  });

  test('options of which none is near are refused with the engine’s figure', () => {
    expect(() => answerOf('volts', ['0 V', '6 V'], [across])).toThrow(
      `options ["0 V","6 V"] without the engine's answer '12.0 V'`
    );
    expect(() => answerOf('volts', ['0 A', '12 A'], [across])).toThrow("answer '12.0 V'");
  });

  test('a meter that is not there is refused', () => {
    expect(() => answerOf('ohms', ['0 Ω', 'open'], [across])).toThrow(
      "unknown 'meter ohms'; allowed: on this board: Heron, meter volts"
    );
  });

  test('an option without a unit is refused', () => {
    expect(() => questionOf({ reads: { meter: 'volts', options: ['0', '12'] } })).toThrow(
      'figures with their unit'
    );
  });
});

describe('testLamp', () => {
  test.each([
    ['return rail B', 'bright'],
    ['feed rail B', 'dim']
  ])('from the feed to %s of a dead road with a loco: %s', (to, lit) => {
    const question = { do: { edits: [{ testLamp: ['feed', to] }] }, testLamp: {} };
    const scene = { controller: 1, locos: { Heron: 'B' } };
    expect(answers(question as never, { scene })).toEqual({ 'test lamp': lit });
  });

  test('asks for three states unless told otherwise, and hides the lamp', () => {
    const question = questionOf({ testLamp: {} });
    expect(asked(question)).toEqual([{ id: 'test lamp', options: ['dark', 'dim', 'bright'] }]);
    expect(hides(question)).toEqual(['test lamp']);
  });
});
