import { expect, test } from 'vitest';
import { fileText, open, yardFile } from '../../src/lib/share';
import { compactWalk, openWalk, openWalkFile, walkFragment, walkText } from '../../src/lib/walk';
import { yardOf } from '../yard/build';
import { sampleWalk } from './sample';

const fragment = walkFragment(sampleWalk) as string;

test('a walkthrough comes back the same from file, link and bytes', async () => {
  for (const input of [walkText(sampleWalk), compactWalk(sampleWalk), fragment]) {
    expect(openWalk(input)).toEqual({ ok: sampleWalk });
  }
  const bytes = new TextEncoder().encode(walkText(sampleWalk));
  const file = { name: 'x.walk.json', size: bytes.length, arrayBuffer: async () => bytes.buffer };
  expect(await openWalkFile(file)).toEqual({ ok: sampleWalk });
});

test('a file says only what is not usual, and a link to three steps is short', () => {
  expect(compactWalk(sampleWalk)).not.toMatch(/"supply"|"speed"|"selector"/);
  expect(fragment.length).toBeLessThan(1000);
});

test('a walkthrough too long for a link has none', () => {
  const noise = Array.from({ length: 40 }, (_, step) =>
    Array.from({ length: 200 }, (__, at) =>
      ((step * 7919 + at * at * 104729) % 1e5).toString(36)
    ).join(' ')
  );
  const steps = noise.map((words) => ({ ...sampleWalk.steps[0], words }));
  expect(walkFragment({ ...sampleWalk, steps } as typeof sampleWalk)).toBeUndefined();
});

test('what is opened on the other page says where it belongs', () => {
  expect(open(walkText(sampleWalk))).toMatchObject({
    why: 'elsewhere',
    wrong: expect.stringContaining('This is a walkthrough. Open it on the page')
  });
  expect(open(fragment)).toMatchObject({ why: 'elsewhere' });
  const yard = fileText(yardFile({ yard: yardOf({ deckRoads: 2 }) }));
  expect(openWalk(yard)).toMatchObject({
    why: 'elsewhere',
    wrong: 'This is a yard. Open it on the page ‘My yard’.'
  });
});
