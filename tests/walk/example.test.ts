import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { advice, answerOf, readWalk, walkText } from '../../src/lib/walk';

const text = readFileSync('static/examples/quillby-quay.walk.json', 'utf8');

test('the shipped example needs no advice, and the engine answers its calls', () => {
  const walk = readWalk(text);
  expect(walk.steps.length).toBeGreaterThanOrEqual(6);
  expect(advice(walk)).toEqual([]);
  const answers = walk.steps.flatMap(({ call, scene }) =>
    call ? [answerOf(walk.yard, scene, call)] : []
  );
  expect(answers).toEqual([
    { answers: { Curlew: 'does not move' } },
    { answers: { Heron: 'falls in' } }
  ]);
  expect(walkText(walk)).toBe(text);
});
