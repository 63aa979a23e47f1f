import { describe, expect, test } from 'vitest';
import {
  checks,
  defaultOptions,
  faultBoard,
  faultTable,
  runChecks,
  type Told
} from '../../src/lib/checks';
import { admit, faultsOf, read, YardSchema, type YardInput } from '../../src/lib/yard';
import { result } from '../../src/lib/checks/result';

const yardOf = (input: YardInput) => admit('yard', YardSchema, input);
const run = (id: string, input: YardInput) =>
  checks.find((check) => check.id === id)?.run(yardOf(input), defaultOptions) ?? [];

describe('runChecks(yard)', () => {
  const told: readonly Told[] = [...runChecks(yardOf({ deckRoads: 1, stablingRoads: 1 }))];

  test('tells each check before it is done, and what it found, the gap proof first', () => {
    const checked = told.flatMap((each) => (each.about === 'check' ? [each.id] : []));
    expect(checked).toEqual(checks.map(({ id }) => id));
    expect(checked[0]).toBe('gap-proof');
    expect(told.filter(({ about }) => about === 'doing')).toHaveLength(checks.length);
  });

  test.each([
    ['faults', 'table'],
    ['pairs', 'pair table']
  ])('then counts the %s up to all of them, and tells their %s', (about, table) => {
    const steps = told.flatMap((each) =>
      each.about === about && 'done' in each ? [[each.done, each.of]] : []
    );
    expect(steps).toEqual(steps.map((_, index) => [index + 1, steps.length]));
    const last = told.findLastIndex((each) => each.about === about);
    expect(told[last + 1]?.about).toBe(table);
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

  test('gives the number of its states as a product in words, and the unsafe ones exactly', () => {
    const { what, amount } = table.summary;
    const [switches = 0, places = 0, all] = [
      ...what.matchAll(/2\^(\d+) settings|× (\d+) places|= ([\d\s]+) states/g)
    ].map(([, ...found]) => Number(found.find((each) => each)?.replaceAll(/\s/g, '')));
    expect(2 ** switches * places * 2).toBe(all);
    const ways = faultsOf(yard).length + 1;
    expect(what).toContain(`× ${ways} for no fault or one of ${ways - 1}.`);
    const total = /of ([\d\s]+) states/.exec(amount)?.[1]?.replaceAll(/\s/g, '');
    expect(Number(total)).toBe((all ?? 0) * ways);
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
