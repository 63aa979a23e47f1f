import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  begunAnew,
  changeNotes,
  huntAside,
  huntBack,
  practiceIn,
  putBack,
  readNotes,
  withFault,
  withHunt,
  withoutFault,
  withPractice,
  withPrinted,
  withReading,
  withTick,
  yardFile,
  yardStore,
  type PracticeNotes
} from '../../src/lib/share';
import { yardOf } from '../yard/build';
import { browser, ok } from './shelf';

const { keepNew, listKept, removeKept, restoreKept } = yardStore;

describe('notes beside a yard', () => {
  test('are empty at first, and read back as they were typed, whatever was typed', () => {
    const { one } = browser();
    expect(ok(readNotes(one, 'y')).bench).toEqual({ readings: {}, ticks: {} });
    fc.assert(
      fc.property(fc.string(), fc.string({ maxLength: 40 }), (rest, typed) => {
        const key = `volts|${rest}`;
        ok(changeNotes(one, 'y', (notes) => withReading(notes, key, typed, 'EM')));
        const { readings } = ok(readNotes(one, 'y')).bench;
        expect(readings[key]).toEqual(typed.trim() === '' ? undefined : { text: typed, by: 'EM' });
      }),
      {
        numRuns: 60,
        seed: 2,
        examples: [
          ['__proto__', '1'],
          ['a|b', '11,6 V']
        ]
      }
    );
  });

  test('two tabs at once: each adds to what the other noted', () => {
    const { one, two } = browser();
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'a', '1')));
    ok(changeNotes(two, 'y', (notes) => withTick(notes, 'laid|x|y', true)));
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'b', '2')));
    const { readings, ticks } = ok(readNotes(two, 'y')).bench;
    expect(Object.keys(readings)).toEqual(['a', 'b']);
    expect(ticks).toEqual({ 'laid|x|y': true });
  });

  test('begun anew they can be put back, after a reload as well; what was typed since stays', () => {
    const { one } = browser();
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'a', '1')));
    ok(changeNotes(one, 'y', (notes) => withTick(notes, 't', true)));
    expect(ok(changeNotes(one, 'y', begunAnew)).bench).toEqual({ readings: {}, ticks: {} });
    // An empty card that is begun anew has nothing to give up.
    ok(changeNotes(one, 'y', begunAnew));
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'b', '2')));
    const back = ok(changeNotes(one, 'y', putBack));
    expect(Object.keys(back.bench.readings).sort()).toEqual(['a', 'b']);
    expect(back.bench.ticks).toEqual({ t: true });
    expect(back.before).toBeUndefined();
    expect(ok(readNotes(one, 'y'))).toEqual(back);
  });

  test('a practice hunt is kept; a damaged one says so and takes nothing else with it', () => {
    const { memory, one } = browser();
    const hunt: PracticeNotes = {
      level: 3,
      seed: 7,
      seen: 'Road B stays dead when switched on.',
      made: [{ test: 'lamp feed rail B to return, own B', outcome: 'dark' }],
      guesses: [{ name: 'wireOff: feed dropper B', isRight: false, after: 1 }],
      isGivenUp: false,
      isLeft: true
    };
    expect(practiceIn(ok(readNotes(one, 'y')))).toBeUndefined();
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'a', '1')));
    ok(changeNotes(one, 'y', (notes) => withPractice(notes, hunt)));
    expect(practiceIn(ok(readNotes(one, 'y')))).toEqual(hunt);
    const text = memory.kept.get('ohmyard.notes.y') ?? '';
    for (const spoilt of ['"seed":7.5', '"seed":null', '"seed":"7"', '"seed":1e9']) {
      memory.kept.set('ohmyard.notes.y', text.replace('"seed":7', spoilt));
      const notes = ok(readNotes(one, 'y'));
      expect(practiceIn(notes), spoilt).toBe('damaged');
      expect(notes.bench.readings).toEqual({ a: { text: '1', by: '' } });
    }
    ok(changeNotes(one, 'y', (notes) => withPractice(notes, hunt)));
    expect(practiceIn(ok(readNotes(one, 'y')))).toEqual(hunt);
  });

  test('what cannot be read is set aside untouched, and the next note begins anew', () => {
    const { memory, one } = browser();
    memory.kept.set('ohmyard.notes.y', '{"version":1,"bench":{"readings":7}}');
    expect(readNotes(one, 'y')).toMatchObject({ why: 'spoilt' });
    expect([...memory.kept.values()]).toContain('{"version":1,"bench":{"readings":7}}');
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'a', '1')));
    expect([...memory.kept.values()]).toContain('{"version":1,"bench":{"readings":7}}');
  });

  test('notes of a newer page are left alone', () => {
    const { memory, one } = browser();
    memory.kept.set('ohmyard.notes.y', '{"version":2}');
    expect(changeNotes(one, 'y', begunAnew)).toMatchObject({ why: 'newer' });
    expect(memory.kept.get('ohmyard.notes.y')).toBe('{"version":2}');
  });

  test('a full or denied store says so, and keeps what it had', () => {
    const { memory, one } = browser();
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'a', '1')));
    memory.quota = 120;
    const full = changeNotes(one, 'y', (notes) => withReading(notes, 'b'.repeat(99), '2'));
    expect(full).toMatchObject({ why: 'full' });
    memory.fails = () => true;
    expect(readNotes(one, 'y')).toMatchObject({ why: 'denied' });
    memory.fails = () => false;
    expect(ok(readNotes(one, 'y')).bench.readings).toEqual({ a: { text: '1', by: '' } });
  });

  test('they are no yard, and come back with a yard that is brought back', () => {
    const { one } = browser();
    const kept = ok(keepNew(one, yardFile({ yard: yardOf({ deckRoads: 3 }) })));
    ok(changeNotes(one, kept.id, (notes) => withReading(notes, 'a', '1')));
    const printed = { revision: 1, day: '2026-11-25', yard: '{}', wires: [] };
    ok(changeNotes(one, kept.id, (notes) => withPrinted(notes, printed)));
    expect(ok(listKept(one)).all).toHaveLength(1);
    const back = ok(restoreKept(one, ok(removeKept(one, kept))));
    const notes = ok(readNotes(one, back.id));
    expect(notes.bench.readings).toHaveProperty('a');
    expect(notes.printed).toEqual(printed);
  });

  test('a hunt is resumed after a reload, put aside and taken up again; readings stay', () => {
    const { one } = browser();
    const hunt = {
      begun: '2026-11-25',
      seen: 'Road C is dead.',
      wrong: 0,
      told: [{ test: 'volts a to b', outcome: 'none', typed: '0,2 V' }]
    };
    ok(changeNotes(one, 'y', (notes) => withReading(notes, 'a', '1')));
    ok(changeNotes(one, 'y', (notes) => withHunt(notes, hunt)));
    expect(ok(readNotes(one, 'y')).hunt).toEqual(hunt);
    const aside = ok(changeNotes(one, 'y', huntAside));
    expect([aside.hunt, aside.huntBefore]).toEqual([undefined, hunt]);
    const other = { ...hunt, seen: 'Road D is slow.' };
    ok(changeNotes(one, 'y', (notes) => withHunt(notes, other)));
    ok(changeNotes(one, 'y', huntBack));
    const back = ok(readNotes(one, 'y'));
    expect([back.hunt, back.huntBefore]).toEqual([hunt, other]);
    expect(back.bench.readings).toHaveProperty('a');
  });

  test('a line of the fault log is kept, whatever its length, and can be taken out', () => {
    const { one } = browser();
    const line = {
      day: '2026-11-25',
      seen: 's'.repeat(999),
      measured: '',
      mended: 'The feed dropper C is off.',
      proved: '',
      by: 'EM'
    };
    ok(changeNotes(one, 'y', (notes) => withFault(notes, line)));
    ok(changeNotes(one, 'y', (notes) => withFault(notes, { ...line, by: 'RT' })));
    const { faults } = ok(readNotes(one, 'y'));
    expect(faults.map(({ by }) => by)).toEqual(['EM', 'RT']);
    expect(faults[0]?.seen).toHaveLength(400);
    ok(changeNotes(one, 'y', (notes) => withoutFault(notes, 0)));
    expect(ok(readNotes(one, 'y')).faults.map(({ by }) => by)).toEqual(['RT']);
  });
});
