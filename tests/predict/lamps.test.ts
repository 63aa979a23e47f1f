import { describe, expect, test } from 'vitest';
import { asked, hides, lampBecause, play, QuestionError } from '../../src/lib/predict';
import { moment, thrown } from '../yard/build';
import { answers, questionOf } from './build';

const track = { deckRoads: 2, lamps: 'track' } as const;
const own = { deckRoads: 2, lamps: 'own' } as const;

describe('a question about lamps', () => {
  test.each([
    ['own supply, plug out', { ...own, plug: {} }, { plug: 'out' as const }, 'lit dark'],
    ['track, knob low', track, { controller: 0.25 }, 'dim dark'],
    ['track, reversed', track, { controller: '60% west' }, 'dark dark'],
    ['track, forward', track, { controller: '60% east' }, 'lit dark'],
    ['own supply, B on as well', own, { switch: { B: true } }, 'lit lit']
  ])('%s: the engine looks', (_, yard, act, looks) => {
    const scene = { switches: { A: true }, controller: 1 };
    const given = answers({ do: act, lamps: ['A', 'B'] }, { yard, scene });
    expect(`${given['lamp A']} ${given['lamp B']}`).toBe(looks);
  });

  test('asks lit, dim or dark, and hides the lamps asked about', () => {
    const question = questionOf({ lamps: ['A', 1] });
    expect(asked(question).map(({ id }) => id)).toEqual(['lamp A', 'lamp 1']);
    expect(asked(question)[0]?.options).toEqual(['lit', 'dim', 'dark']);
    expect(hides(question)).toEqual(['lamp A', 'lamp 1']);
  });

  test('refuses a lamp that is not there', () => {
    const error = thrown(() => answers({ lamps: ['A'] }, {}));
    expect(error).toBeInstanceOf(QuestionError);
    expect(String(error)).toContain("unknown 'lamp A'");
  });

  test('the reason names current and supply', () => {
    const { yard, scene } = moment(own, { switches: { A: true } });
    const played = play(yard, scene, undefined);
    expect(lampBecause(played, 'A')).toBe("10.0 mA flow in lamp A, from the lamps' own supply.");
    expect(lampBecause(played, 'B')).toBe('No current flows in lamp B.');
  });
});
