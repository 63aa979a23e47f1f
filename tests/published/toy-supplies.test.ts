import { describe, expect, test } from 'vitest';
import { checks, defaultOptions } from '../../src/lib/checks';
import { admit, YardSchema, type YardInput } from '../../src/lib/yard';
import { thrown, yardOf } from '../yard/build';

/** IEC 61558-2-7:2007 by its national edition, and NEM 609:2010 cl. 6.1: at most 10 A and 200 VA; EN/IEC 62115, from memory: at most 24 V. */
describe('supplies', () => {
  const refused = (supply: YardInput['supply']) =>
    thrown(() => admit('yard', YardSchema, { deckRoads: 1, supply })) !== undefined;

  test('of 24 V and 10 A are let in, and no more', () => {
    expect(refused({ volts: 24, limitAmps: 10 })).toBe(false);
    expect(refused({ volts: 24.1 })).toBe(true);
    expect(refused({ limitAmps: 10.1 })).toBe(true);
  });

  const findings = (input: YardInput) =>
    checks.find(({ id }) => id === 'supply')?.run(yardOf(input), defaultOptions) ?? [];

  test('of more than 200 W must be changed, for a limit that gives 200 W', () => {
    const [strong] = findings({ deckRoads: 1, supply: { volts: 24, limitAmps: 10 } });
    expect(strong).toMatchObject({ grade: 'must fix' });
    expect(strong?.cure).toContain('8.33 A');
    const [usual] = findings({ deckRoads: 1, scale: 'O', supply: { volts: 20, limitAmps: 10 } });
    expect(usual).toMatchObject({ grade: 'fine' });
  });

  test('above 16 V are worth a thought in the smaller scales, by common practice', () => {
    const grade = (volts: number) => findings({ deckRoads: 1, supply: { volts } })[0]?.grade;
    expect(grade(16)).toBe('fine');
    expect(grade(16.5)).toBe('think');
  });

  test('stay far below what dry hands may touch: 60 V DC, IEC 60598-1:2008 cl. 8.2.3', () => {
    const most = 24;
    expect(most).toBeLessThan(60 / 2);
    expect(refused({ volts: most })).toBe(false);
  });
});
