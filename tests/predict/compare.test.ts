import { expect, test } from 'vitest';
import { answer } from '../../src/lib/predict';
import { moment } from '../yard/build';

test('compare speed: a loco that meets the end of its road while watched is as fast as it was', () => {
  const { yard, scene } = moment(
    { deckRoads: 2 },
    { locos: { Avocet: 'A' }, switches: { A: true }, controller: 1 }
  );
  const question = { do: { switch: { B: true } }, compare: { speed: 'Avocet' } };
  const { answers, played } = answer(question, yard, scene);
  expect(played.after.locos.Avocet?.speed, 'at the end of the watch it is held').toBe(0);
  expect(answers.Avocet).toBe('about the same');
});
