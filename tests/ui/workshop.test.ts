import { describe, expect, test } from 'vitest';
import { enlarged } from '../../src/lib/draw';
import { countWords, read, type Yard } from '../../src/lib/yard';
import type { Round, Stage } from '../../src/lib/walk';
import { hintPlace, hintWords } from '../../src/lib/ui/workshop/hint';
import { actFor } from '../../src/lib/ui/workshop/keys';
import { stageSays, WITH_HINT } from '../../src/lib/ui/workshop/says';
import { readableFrom } from '../../src/lib/ui/workshop/sight';
import { planned, rounds } from '../walk/planned';

const key = (name: string, stage: Stage, shiftKey = false) =>
  actFor({ key: name, shiftKey }, stage);

describe('actFor({ key, shiftKey }, stage)', () => {
  test.each(['set', 'first', 'talk', 'throw', 'why', 'check'] as const)(
    'at %s a clicker goes on, back and to black',
    (stage) => {
      expect(key('PageDown', stage)).toEqual({ kind: 'next' });
      expect(key('PageUp', stage)).toEqual({ kind: 'back' });
      expect(key('.', stage)).toBe('black');
      expect(key('u', stage)).toBe('undo');
      expect(key('R', stage, true)).toEqual({ kind: 'reset' });
    }
  );

  test('letters and digits count in a vote; elsewhere B is black and a digit throws a row', () => {
    expect(key('b', 'first')).toEqual({ kind: 'vote', option: 1, by: 1 });
    expect(key('B', 'second')).toEqual({ kind: 'vote', option: 1, by: 1 });
    expect(key('B', 'first', true)).toEqual({ kind: 'vote', option: 1, by: -1 });
    expect(key('7', 'second')).toEqual({ kind: 'digit', digit: 7 });
    expect(key('-', 'first')).toEqual({ kind: 'less' });
    expect(key('b', 'talk')).toBe('black');
    expect(key('7', 'why')).toEqual({ kind: 'flip', road: 6 });
  });

  test('any other key means nothing', () => {
    for (const name of ['Tab', 'Enter', 'x', 'F5', 'Shift', 'constructor', '__proto__']) {
      expect(key(name, 'set'), name).toBeUndefined();
    }
  });
});

test('what the screen says is fifteen words at most', () => {
  const hints = [...rounds.values()].map(({ question }) => hintWords(question));
  for (const text of [...Object.values(stageSays), WITH_HINT, ...hints]) {
    expect(countWords(text), text).toBeLessThanOrEqual(15);
  }
});

test('each planned call has a place to ring before anything is done', () => {
  for (const id of planned) {
    const { board, look } = rounds.get(id) as Round;
    const [side] = board.sides as [Round['board']['sides'][number]];
    const reading = read(side.yard, side.scene);
    expect(hintPlace(look, { ...side, index: 0, reading }), id).toBeDefined();
  }
});

test('readableFrom: letters of 25 mm are read from 5 m (1/200 of the distance)', () => {
  expect(readableFrom(16, 1280, 2)).toBeCloseTo(5, 10);
});

describe('enlarged(subject, room)', () => {
  const [{ board }] = [...rounds.values()] as [Round];
  const [side] = board.sides as [Round['board']['sides'][number]];
  const of = (yard: Yard, views: readonly ('rows' | 'plan')[]) => ({
    yard,
    drawn: side.drawn,
    reading: read(yard, { ...side.scene, locos: {}, edits: [] }),
    views
  });

  test('one road fills a wide room more than twice as large', () => {
    const fit = enlarged(of(side.yard, ['rows']), { width: 1240, height: 560 });
    expect(fit).toMatchObject({ whole: true, views: ['rows'] });
    expect(fit.times).toBeGreaterThan(2);
    expect(fit.width * fit.times).toBeLessThanOrEqual(1241);
  });

  test('of two views that would both be small the first stays; a long yard is larger than its room', () => {
    const long = { ...side.yard, deckRoads: 12 };
    const fit = enlarged(of(long, ['rows', 'plan']), { width: 740, height: 680 });
    expect(fit).toMatchObject({ views: ['rows'], whole: false });
    expect(fit.times).toBeGreaterThanOrEqual(1.3);
  });
});
