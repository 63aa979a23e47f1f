import { expect, test } from 'vitest';
import { yardFile, yardStore } from '../../src/lib/share';
import { outline, walkStore } from '../../src/lib/walk';
import { browser, ok } from '../share/shelf';
import { yardOf } from '../yard/build';

const walk = outline(yardOf({ deckRoads: 2 }));
const other = { ...walk, title: 'Told anew' };

test('a walkthrough is kept beside yards, and read as it was kept', () => {
  const { one } = browser();
  ok(yardStore.keepNew(one, yardFile({ yard: walk.yard })));
  const kept = ok(walkStore.keepNew(one, walk));
  expect(ok(walkStore.readKept(one, kept.id)).file).toEqual(walk);
  expect(ok(walkStore.listKept(one)).all).toHaveLength(1);
  expect(ok(yardStore.listKept(one)).all).toHaveLength(1);
  expect(ok(walkStore.duplicateKept(one, kept.id)).file.title).toBe(`${walk.title}, copy`);
});

test('what another tab has kept is not written over', () => {
  const { one, two } = browser();
  const kept = ok(walkStore.keepNew(one, walk));
  ok(walkStore.keepAgain(two, kept, other));
  const refused = walkStore.keepAgain(one, kept, { ...walk, title: 'Mine' });
  expect(refused).toMatchObject({ why: 'conflict', theirs: { file: { title: 'Told anew' } } });
  expect(ok(walkStore.readKept(one, kept.id)).file.title).toBe('Told anew');
});

test('a damaged record is set aside untouched, and a full store is told', () => {
  const { one, memory } = browser();
  memory.kept.set('ohmyard.walk.x', '{"revision":1');
  expect(ok(walkStore.listKept(one))).toMatchObject({
    all: [],
    words: expect.stringMatching(/walkthrough’s record was damaged/) as string
  });
  expect(memory.kept.get('ohmyard.aside.walk.x')).toBe('{"revision":1');
  memory.quota = 10;
  expect(walkStore.keepNew(one, walk)).toMatchObject({
    why: 'full',
    wrong: expect.stringMatching(/Save your walkthrough as a file/) as string
  });
});
