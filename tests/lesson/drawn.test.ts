import { expect, test } from 'vitest';
import { readLesson } from '../../src/lib/lesson';
import { file, sampleWith } from './sample';

const boardWith = (drawn: string) =>
  readLesson(file, sampleWith({ 19: [`drawn: ${drawn}`] })).steps[0]?.board?.sides[0]?.drawn;

test('a board can be redrawn: in a mirror, with its rows in another order', () => {
  expect(boardWith('{ mirrored: true, order: [C, A, B] }')).toEqual({
    mirrored: true,
    order: ['C', 'A', 'B']
  });
  expect(readLesson(file, sampleWith({})).steps[0]?.board?.sides[0]?.drawn).toEqual({
    mirrored: false,
    order: []
  });
});

test.each([
  ['a road left out', '{ order: [C, A] }', 'each of A, B, C once'],
  ['a road twice', '{ order: [C, A, A] }', 'each of A, B, C once'],
  ['a word for a yes', '{ mirrored: maybe }', 'true or false']
])('%s stops the build with file, line and what is allowed', (_, drawn, allowed) => {
  expect(() => boardWith(drawn)).toThrow(/^content\/lessons\/99-sample\.md:19: /);
  expect(() => boardWith(drawn)).toThrow(allowed);
});

test('the order of rows is for a deck that is wired for good', () => {
  const moving = sampleWith({
    15: 'yard: { deckRoads: 3, stablingRoads: 1 }',
    19: ['drawn: { order: [C, A, B] }']
  });
  expect(() => readLesson(file, moving)).toThrow('no order where the deck moves');
});
