import { describe, expect, test } from 'vitest';
import { answer, asked, hides } from '../../src/lib/predict';
import { sceneOf, yardOf, type SceneInput } from '../yard/build';

const yard = yardOf({
  deckRoads: 2,
  runningRoad: 'interlocked',
  cuts: [{ road: 'Q', atMm: 2100 }]
});
const question = { do: { controller: 0.9 }, falls: { of: ['Heron', 'coach'] } };

/** What the engine says of a train before a dead section, the deck between its stops. */
const told = (stock: SceneInput['stock'], q1: boolean) =>
  answer(
    question,
    yard,
    sceneOf(yard, {
      deck: -30,
      switches: { Q1: q1, Q2: true },
      locos: { Heron: { road: 'Q1', atMm: 1700 } },
      stock
    })
  ).answers;

describe('answer({ falls })', () => {
  test.each<[SceneInput['stock'], boolean, string, string]>([
    [{ coach: { ahead: 'Heron' } }, true, 'stays on the rails', 'falls in'],
    [{ coach: { behind: 'Heron' } }, true, 'stays on the rails', 'stays on the rails'],
    [{ coach: { ahead: 'Heron' } }, false, 'does not move', 'does not move']
  ])('%j, Q1 on: %j', (stock, q1, Heron, coach) => {
    expect(told(stock, q1)).toEqual({ Heron, coach });
  });

  test('asks of each, and hides each', () => {
    expect(asked(question).map(({ id }) => id)).toEqual(['Heron', 'coach']);
    expect(asked(question)[0]?.options).toHaveLength(3);
    expect(hides(question)).toEqual(['Heron', 'coach']);
  });
});
