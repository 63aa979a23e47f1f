import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  yardFile,
  yardStore,
  type Device,
  type Kept,
  type Stored,
  type YardFile
} from '../../src/lib/share';
import { yardOf } from '../yard/build';
import { browser, Memory, ok, tabs } from './shelf';

const {
  duplicateKept,
  keepAgain,
  keepNew,
  listKept,
  readKept,
  removeKept,
  renameKept,
  restoreKept
} = yardStore;

const fileOf = (deckRoads: number, name = `Yard of ${deckRoads}`): YardFile =>
  yardFile({ yard: yardOf({ deckRoads, name }) });

const namesOn = (device: Device): string[] => ok(listKept(device)).all.map(({ file }) => file.name);

describe('several yards', () => {
  test('are listed, the last changed first, and read back whole', () => {
    const { one } = browser();
    const nine = ok(keepNew(one, fileOf(9)));
    const five = ok(keepNew(one, fileOf(5)));
    expect(namesOn(one)).toEqual(['Yard of 5', 'Yard of 9']);
    ok(keepAgain(one, nine, fileOf(9, 'Shed')));
    expect(namesOn(one)).toEqual(['Shed', 'Yard of 5']);
    expect(ok(readKept(one, five.id))).toEqual(five);
    expect(ok(listKept(one)).words).toBe('');
  });

  test('a yard that did not change is not kept anew', () => {
    const { one, memory } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const before = new Map(memory.kept);
    expect(ok(keepAgain(one, kept, fileOf(9)))).toEqual(kept);
    expect(memory.kept).toEqual(before);
  });

  test('are renamed, yard and all; a name that is too long is refused in words', () => {
    const { one } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const again = ok(renameKept(one, kept, 'Shed'));
    expect(again).toMatchObject({
      id: kept.id,
      revision: 2,
      file: { name: 'Shed', yard: { name: 'Shed' } }
    });
    expect(renameKept(one, again, 'x'.repeat(61))).toEqual({
      why: 'does not fit',
      wrong: 'A name has at most 60 characters.'
    });
    expect(ok(readKept(one, kept.id))).toEqual(again);
  });

  test.each(['Shed', 'x'.repeat(60), '😀'.repeat(30)])('%s is duplicated as its copy', (name) => {
    const { one } = browser();
    const kept = ok(keepNew(one, fileOf(9, name)));
    const copy = ok(duplicateKept(one, kept.id));
    expect(copy.id).not.toBe(kept.id);
    expect(copy.file.name).toMatch(/, copy$/);
    expect(copy.file.name).not.toMatch(/\p{Cs}/u);
    expect(copy.file.yard.deckRoads).toBe(9);
    expect(ok(readKept(one, kept.id))).toEqual(kept);
  });

  test('are deleted, and put back as they were', () => {
    const { one } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const removed = ok(removeKept(one, kept));
    expect(namesOn(one)).toEqual([]);
    expect(readKept(one, kept.id)).toMatchObject({ why: 'gone' });
    expect(ok(restoreKept(one, removed))).toEqual(kept);
    expect(ok(keepAgain(one, kept, fileOf(8))).revision).toBe(2);
  });

  test('put back twice, nothing is overwritten', () => {
    const { one } = browser();
    const removed = ok(removeKept(one, ok(keepNew(one, fileOf(9)))));
    const first = ok(keepAgain(one, ok(restoreKept(one, removed)), fileOf(8)));
    const second = ok(restoreKept(one, removed));
    expect(second.id).not.toBe(first.id);
    expect(ok(readKept(one, first.id))).toEqual(first);
  });

  test('what others keep in the same storage is left alone', () => {
    const { one, memory } = browser();
    memory.kept.set('ohmyard.progress', '{}').set('theme', 'dark');
    ok(removeKept(one, ok(keepNew(one, fileOf(9)))));
    expect(namesOn(one)).toEqual([]);
    expect([...memory.kept]).toEqual([
      ['ohmyard.progress', '{}'],
      ['theme', 'dark']
    ]);
  });
});

describe('two tabs on one yard', () => {
  test('the second to keep is refused, is told what the first kept, and may keep both', () => {
    const { one, two } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const theirs = ok(keepAgain(two, ok(readKept(two, kept.id)), fileOf(8)));
    const refused = keepAgain(one, kept, fileOf(7));
    expect(refused).toEqual({
      why: 'conflict',
      wrong: 'Another tab has changed this yard. Keep both, or take theirs.',
      theirs
    });
    ok(keepNew(one, fileOf(7)));
    expect(namesOn(one)).toEqual(['Yard of 7', 'Yard of 8']);
  });

  test('renaming and deleting what another tab has changed is refused too', () => {
    const { one, two } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const theirs = ok(keepAgain(two, kept, fileOf(8)));
    for (const stored of [renameKept(one, kept, 'Shed'), removeKept(one, kept)]) {
      expect(stored).toMatchObject({ why: 'conflict', theirs });
    }
    expect(ok(readKept(one, kept.id))).toEqual(theirs);
  });

  test('when both wrote the same revision at once, the one that lost is told at its next keeping', () => {
    const { one, two, memory } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const before = new Map(memory.kept);
    const mine = ok(keepAgain(one, kept, fileOf(8)));
    for (const [key, text] of before) memory.kept.set(key, text);
    const theirs = ok(keepAgain(two, kept, fileOf(7)));
    expect(theirs.revision).toBe(mine.revision);
    expect(keepAgain(one, mine, fileOf(6))).toMatchObject({ why: 'conflict', theirs });
  });

  test('a yard that another tab deleted can be kept as a new one', () => {
    const { one, two } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    ok(removeKept(two, kept));
    expect(keepAgain(one, kept, fileOf(8))).toMatchObject({ why: 'gone' });
    expect(namesOn(one)).toEqual([]);
    ok(keepNew(one, fileOf(8)));
    expect(namesOn(one)).toEqual(['Yard of 8']);
  });

  test('any keepings by three tabs: what each tab kept was seen by the next, or refused', () => {
    const step = fc.record({
      tab: fc.nat(2),
      look: fc.boolean(),
      roads: fc.integer({ min: 1, max: 40 })
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const tab = tabs(new Memory());
        const devices = ['a', 'b', 'c'].map(tab);
        let stands = ok(keepNew(tab('first'), fileOf(3)));
        const known: Kept[] = [stands, stands, stands];
        for (const { tab: at, look, roads } of steps) {
          const device = devices[at] as Device;
          if (look) known[at] = ok(readKept(device, stands.id));
          const mine = known[at] as Kept;
          const stored = keepAgain(device, mine, fileOf(roads));
          const fresh = mine.revision === stands.revision && mine.by === stands.by;
          expect('ok' in stored).toBe(fresh);
          if ('ok' in stored) known[at] = stands = stored.ok;
          expect(ok(readKept(device, stands.id))).toEqual(stands);
        }
      }),
      { numRuns: 60, seed: 1 }
    );
  });
});

describe('a store that fails', () => {
  test('full: says so, and what stood there stands', () => {
    const { one, memory } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    memory.quota = [...memory.kept].flat().join('').length + 5;
    const before = new Map(memory.kept);
    const words = 'This browser’s store is full. Save your yard as a file, or delete another.';
    const large = fileOf(9, 'A name that is a good deal longer');
    expect(keepNew(one, fileOf(8))).toEqual({ why: 'full', wrong: words });
    expect(keepAgain(one, kept, large)).toEqual({ why: 'full', wrong: words });
    expect(memory.kept).toEqual(before);
    expect(ok(removeKept(one, kept)).id).toBe(kept.id);
    ok(keepNew(one, fileOf(8)));
  });

  const throwing = (): never => {
    throw new Error('SecurityError');
  };
  test.each<[what: string, storage: Device['storage']]>([
    ['throws', throwing],
    ['is null', () => null]
  ])('denied, because it %s: every answer says so', (_, storage) => {
    const device = { ...browser().one, storage };
    const mark = { id: 'y1', revision: 1, by: 'one' };
    for (const stored of [
      listKept(device),
      readKept(device, 'y1'),
      keepNew(device, fileOf(9)),
      keepAgain(device, mark, fileOf(9)),
      renameKept(device, mark, 'Shed'),
      duplicateKept(device, 'y1'),
      removeKept(device, mark),
      restoreKept(device, { id: 'y1', text: '' })
    ]) {
      expect(stored).toEqual({
        why: 'denied',
        wrong: 'This browser keeps nothing for this page. Save your yard as a file.'
      });
    }
  });

  test('one that forgets what it is given is not believed', () => {
    const { one, memory } = browser();
    memory.setItem = () => undefined;
    expect(keepNew(one, fileOf(9))).toMatchObject({ why: 'denied' });
  });

  test.each<[what: string, spoil: (text: string) => string]>([
    ['cut', (text) => text.slice(0, 40)],
    ['empty', () => ''],
    ['null', () => 'null'],
    ['a number', () => '7'],
    ['of no revision', (text) => text.replace('"revision":1', '"revision":"x"')],
    ['of no file', (text) => text.replace('"file"', '"pile"')],
    ['a yard that does not fit', (text) => text.replace('\\"deckRoads\\":9', '\\"deckRoads\\":99')]
  ])('a record that is %s is set aside, untouched; the others are there', (_, spoil) => {
    const { one, memory } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    ok(keepNew(one, fileOf(8)));
    const key = [...memory.kept.keys()][0] as string;
    const spoilt = spoil(memory.kept.get(key) as string);
    expect(spoilt).not.toBe(memory.kept.get(key));
    memory.kept.set(key, spoilt);
    const { all, words } = ok(listKept(one));
    expect(all.map(({ file }) => file.name)).toEqual(['Yard of 8']);
    expect(words).toBe(
      'This yard’s record was damaged. It is set aside, untouched, on this device.'
    );
    expect(memory.kept.get(`ohmyard.aside.${kept.id}`)).toBe(spoilt);
    expect(memory.kept.has(key)).toBe(false);
    expect(ok(listKept(one)).words).toBe('');
    expect(keepAgain(one, kept, fileOf(7))).toMatchObject({ why: 'gone' });
  });

  test('a damaged record is neither overwritten by keeping, nor by one set aside before', () => {
    const { one, memory } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const key = `ohmyard.yard.${kept.id}`;
    memory.kept.set(key, 'first');
    expect(keepAgain(one, kept, fileOf(7))).toMatchObject({ why: 'spoilt' });
    memory.kept.set(key, 'second');
    expect(readKept(one, kept.id)).toMatchObject({ why: 'spoilt' });
    expect([...memory.kept.values()]).toEqual(['first', 'second']);
  });

  test('a damaged record stays where it is when there is no room to set it aside', () => {
    const { one, memory } = browser();
    memory.kept.set('ohmyard.yard.old', 'damaged');
    memory.quota = 30;
    const before = new Map(memory.kept);
    expect(ok(listKept(one))).toMatchObject({
      all: [],
      words: expect.stringContaining('full') as string
    });
    expect(memory.kept).toEqual(before);
  });

  test('a yard of a newer page is left alone, and said to be there', () => {
    const { one, memory } = browser();
    const kept = ok(keepNew(one, fileOf(9)));
    const [key, text] = [...memory.kept][0] as [string, string];
    memory.kept.set(key, text.replace('\\"version\\":1', '\\"version\\":2'));
    const before = new Map(memory.kept);
    expect(ok(listKept(one))).toMatchObject({
      all: [],
      words: expect.stringContaining('newer') as string
    });
    expect(keepAgain(one, kept, fileOf(8))).toMatchObject({ why: 'newer' });
    expect(removeKept(one, kept)).toMatchObject({ why: 'newer' });
    expect(memory.kept).toEqual(before);
  });

  test('failing at any moment, or full at any moment, it loses nothing that it said was kept', () => {
    const step = fc.record({
      what: fc.constantFrom('new', 'again', 'rename', 'copy', 'remove', 'list'),
      which: fc.nat(9),
      roads: fc.integer({ min: 1, max: 40 }),
      failing: fc.option(fc.nat(6), { nil: undefined }),
      quota: fc.oneof(fc.constant(Infinity), fc.nat(1500))
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const { one, memory } = browser();
        const kept = new Map<string, Kept>();
        for (const { what, which, roads, failing, quota } of steps) {
          let calls = 0;
          memory.fails = () => calls++ === failing;
          memory.quota = quota;
          const mark = [...kept.values()][which % Math.max(1, kept.size)];
          const act = (): Stored<unknown> => {
            if (what === 'list') return listKept(one);
            if (what === 'new' || !mark) return keepNew(one, fileOf(roads));
            if (what === 'again') return keepAgain(one, mark, fileOf(roads));
            if (what === 'rename') return renameKept(one, mark, `Name ${roads}`);
            return what === 'copy' ? duplicateKept(one, mark.id) : removeKept(one, mark);
          };
          const stored = act();
          memory.fails = () => false;
          memory.quota = Infinity;
          const now = new Map(ok(listKept(one)).all.map((each) => [each.id, each]));
          // What failed may have come through all the same; nothing else may have changed.
          for (const [id, before] of kept) {
            if (id !== mark?.id || ('wrong' in stored && !now.has(id))) {
              expect(now.get(id)).toEqual(before);
            }
          }
          if ('wrong' in stored) expect(stored.wrong.length).toBeGreaterThan(10);
          else if (what !== 'list' && what !== 'remove') {
            const { id } = stored.ok as Kept;
            expect(now.get(id)).toEqual(stored.ok);
          }
          kept.clear();
          for (const [id, each] of now) kept.set(id, each);
        }
      }),
      { numRuns: 150, seed: 2 }
    );
  });
});
