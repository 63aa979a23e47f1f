import { expect, test } from 'vitest';
import { between } from '../../src/lib/ui/between';
import { sampleWalk } from '../walk/sample';

const [first, , third] = sampleWalk.steps.map(({ scene }) => scene);

test('between(from, to, share) slides the deck with its pin out, and is there at the end', () => {
  if (!first || !third) throw new Error('The sample has three steps.');
  expect(first.deck).toBe(0);
  expect(third.deck).toBeLessThan(0);
  const half = between(first, third, 0.5);
  expect(half.deck).toBeCloseTo(third.deck / 2, 9);
  expect(half.pin).toBe('out');
  expect(half.switches).toEqual(third.switches);
  expect(between(first, third, 1)).toEqual({ ...third, pin: 'out' });
  expect(between(first, first, 0.3)).toEqual(first);
});

test('a vehicle rolls along its own road, and is at once on another one', () => {
  if (!first || !third) throw new Error('The sample has three steps.');
  const moved = {
    ...first,
    locos: { ...first.locos, Plover: { ...first.locos.Plover, road: 'A', atMm: 1000 } }
  } as typeof first;
  const from = first.locos.Plover?.atMm ?? 0;
  expect(between(first, moved, 0.25).locos.Plover?.atMm).toBeCloseTo(from + (1000 - from) / 4, 9);
  expect(between(first, third, 0.25).locos.Heron?.road).toBe('C');
});
