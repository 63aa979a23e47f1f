import { describe, expect, test } from 'vitest';
import {
  checks,
  defaultOptions,
  faultBoard,
  faultTable,
  runChecks,
  type Told
} from '../../src/lib/checks';
import { admit, read, YardSchema, type YardInput } from '../../src/lib/yard';

const yardOf = (input: YardInput) => admit('yard', YardSchema, input);
const run = (id: string, input: YardInput) =>
  checks.find((check) => check.id === id)?.run(yardOf(input), defaultOptions) ?? [];

/** What the last step of some work returns. */
function result<T>(steps: Generator<unknown, T>): T {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

describe('runChecks(yard)', () => {
  const told: readonly Told[] = [...runChecks(yardOf({ deckRoads: 2, stablingRoads: 1 }))];

  test('tells each check before it is done, and what it found, the gap proof first', () => {
    const checked = told.flatMap((each) => (each.about === 'check' ? [each.id] : []));
    expect(checked).toEqual(checks.map(({ id }) => id));
    expect(checked[0]).toBe('gap-proof');
    expect(told.filter(({ about }) => about === 'doing')).toHaveLength(checks.length);
  });

  test('then counts the faults up to all of them, and ends with their table', () => {
    const faults = told.flatMap((each) => (each.about === 'faults' ? [each] : []));
    expect(faults.map(({ done }) => done)).toEqual(faults.map((_, index) => index + 1));
    expect(faults.at(-1)?.done).toBe(faults.at(-1)?.of);
    expect(told.at(-1)?.about).toBe('table');
  });

  test('tells what can be sent to a page as it is', () => {
    expect(structuredClone(told)).toEqual(told);
  });
});

describe('faultTable(yard)', () => {
  const yard = yardOf({ deckRoads: 2, stablingRoads: 2 });
  const table = result(faultTable(yard));

  test('says of each fault what it lets happen, whether it shows, and which test finds it', () => {
    expect(table.rows.length).toBeGreaterThan(3);
    for (const { fault, lets, notice, test: how, cure } of table.rows) {
      expect(fault).toMatch(/\.$/);
      expect(lets).toMatch(/^Road .+ can be live while its (west|east) end faces nothing\.$/);
      expect(notice).toMatch(/^(In everyday use nothing shows it|Yes: .+)\.$/);
      expect(how).toMatch(/A test lamp across the rails of .+ must stay dark\.$/);
      expect(cure).not.toBe('');
    }
  });

  test('has a board for each, with the fault in it and volts on the open road', () => {
    for (const row of table.rows) {
      const { lets } = row;
      const board = faultBoard(yard, row);
      expect(board.scene.faults).toHaveLength(1);
      const road = /^Road (\S+)/.exec(lets)?.[1] ?? '';
      const volts = read(board.yard, board.scene).between(
        `feed rail ${road}`,
        `return rail ${road}`
      );
      expect(Math.abs(volts ?? 0), lets).toBeGreaterThan(1);
    }
  });

  test('puts first what nothing shows', () => {
    const grades = table.rows.map(({ grade }) => grade);
    expect(grades).toEqual(
      grades.toSorted((a, b) => Number(b === 'must fix') - Number(a === 'must fix'))
    );
  });
});

describe('two controllers on one return', () => {
  const second = { roads: ['C', 'D'] };

  test('are fine with isolated supplies: nothing flows from one into the other', () => {
    const [finding] = run('controllers', { deckRoads: 4, second });
    expect(finding).toMatchObject({ grade: 'fine' });
    expect(finding?.amount).toMatch(/^0\.00 A/);
  });

  test('short one supply that serves both, up to its limit', () => {
    const [finding] = run('controllers', { deckRoads: 4, second: { ...second, shares: 'supply' } });
    expect(finding).toMatchObject({ grade: 'must fix' });
    expect(finding?.amount).toMatch(/^1\.50 A/);
    expect(run('controllers', { deckRoads: 4 })).toEqual([]);
  });
});

describe('contacts loaded too lightly', () => {
  test('are those of lamps alone: 10 mA, where silver wants about 160 mA', () => {
    const [finding] = run('light-contacts', { deckRoads: 3, lamps: 'own' });
    expect(finding).toMatchObject({ grade: 'think' });
    expect(finding?.where).toEqual(['lamp pole A', 'lamp pole B', 'lamp pole C']);
    expect(finding?.amount).toMatch(/^10 mA through lamp pole A; .* 160 mA$/);
    expect(run('light-contacts', { deckRoads: 3 })[0]).toMatchObject({ grade: 'fine' });
  });
});

describe('a train too long for its road', () => {
  test('is found from the longest loco and coaches of 240 mm', () => {
    const train = (roadLengthMm: number) =>
      run('room', { deckRoads: 2, roadLengthMm }).find(({ what }) => /coach/.test(what));
    expect(train(1200)).toMatchObject({
      grade: 'fine',
      amount: '970 mm on 1200 mm; with one more 1210 mm'
    });
    expect(train(400)).toMatchObject({ grade: 'think', where: ['A', 'B'] });
  });
});
