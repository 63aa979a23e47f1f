import { describe, expect, test } from 'vitest';
import { LessonError, readLesson } from '../../src/lib/lesson';
import { thrown } from '../yard/build';
import { file, sample, sampleWith } from './sample';

type Mistake = [
  what: string,
  change: Parameters<typeof sampleWith>[0],
  line: number,
  met: string,
  allowed: string
];

const words = (count: number): string => Array<string>(count).fill('word').join(' ');
const lines = (from: number, to: number): Record<number, string[]> =>
  Object.fromEntries(Array.from({ length: to - from + 1 }, (_, index) => [from + index, []]));

const frontAndShape: Mistake[] = [
  ['no front matter', { 1: '# A lesson' }, 1, 'no front matter', "two lines of '---' at the top"],
  ['no title', { 2: [] }, 2, 'nothing in `title`', 'a value: it must be given'],
  ['minutes as a word', { 3: 'minutes: five' }, 3, '"five" in `minutes`', 'whole minutes'],
  ['four new terms', { 5: 'terms: [a, b, c, d]' }, 5, '["a","b","c","d"]', 'three new terms'],
  ['text before the first step', { 9: 'Hello.' }, 9, 'text before the first step', 'heading'],
  ['no step', lines(10, 39), 9, 'no step', "at least one '## heading'"],
  ['an unknown kind of block', { 14: '```bord' }, 14, "a block of kind 'bord'", 'board or call'],
  ['a fence that never ends', lines(35, 39), 22, 'a block without an end', 'a closing line of ```'],
  [
    'two boards in one step',
    { 20: ['```', '', '```board', 'yard: { deckRoads: 1 }', '```'] },
    22,
    'a second board in one step',
    'one of each a step'
  ],
  [
    'two calls in one step',
    { 35: ['```', '', '```call', 'ask: And now?', '```'] },
    37,
    'a second call in one step',
    'one of each a step'
  ],
  ['a call without a board', lines(14, 20), 15, 'a call without a board', 'a board block above it']
];

const board: Mistake[] = [
  ['a brace that never ends', { 15: 'yard: { deckRoads: 3' }, 16, 'Flow map', 'valid YAML'],
  [
    'a key written twice',
    { 17: ['controller: 60% east', 'controller: centre'] },
    18,
    'Map keys must be unique',
    'valid YAML'
  ],
  ['41 deck roads', { 15: 'yard: { deckRoads: 41 }' }, 15, '41 in `yard.deckRoads`', '1 to 40'],
  [
    '41 deck roads, further down',
    { 15: ['yard:', '  return: ring', '  deckRoads: 41'] },
    17,
    '41 in `yard.deckRoads`',
    '1 to 40 deck roads'
  ],
  ['an unknown loco', { 16: 'locos: { Plovr: A }' }, 16, "unknown loco 'Plovr'", 'Plover, Heron'],
  ['an unknown road', { 16: 'locos: { Plover: Z }' }, 16, "road 'Z' in `locos.Plover`", 'A, B, C'],
  [
    'two locos on one road',
    { 16: 'locos: { Plover: A, Heron: A }' },
    16,
    'road A, where Plover stands',
    'a road of its own'
  ],
  ['an unknown key', { 17: 'controler: 60% east' }, 17, "the unknown key 'controler'", 'the keys'],
  ['a knob without a way', { 17: 'controller: 60%' }, 17, '"60%" in `controller`', "'60% east'"],
  [
    'an edit of an unknown wire',
    { 18: 'edits: [ { off: return dropper Z } ]' },
    18,
    "'return dropper Z' in `edits`",
    'feed wire, feed link A-B'
  ],
  ['an unknown edit', { 18: 'edits: [ { cut: feed wire } ]' }, 18, '{"cut":', 'an edit: {"off":'],
  [
    'a fault of a contact that is not there',
    { 18: 'faults: [ { stuckOpen: toggle Z } ]' },
    18,
    '{"stuckOpen":"toggle Z"} in `faults.0`',
    'toggle A, toggle B, toggle C'
  ],
  [
    'an unknown fault',
    { 18: 'faults: [ { rusty: feed wire } ]' },
    18,
    '{"rusty":',
    'a fault: {"stuckOpen":'
  ],
  [
    'an unknown view',
    { 19: 'show: [row]' },
    19,
    '"row" in `show.0`',
    'rows, plan, panel or diagram'
  ],
  ['a trace of an empty road', { 19: 'trace: C' }, 19, "`trace` of road 'C'", 'A, B'],
  [
    'a pair whose yard does not fit',
    { 19: 'pair: { title: big, yard: { deckRoads: 41 } }' },
    19,
    '41 in `deckRoads`',
    '1 to 40 deck roads'
  ]
];

const call: Mistake[] = [
  ['a question too long', { 23: `ask: ${words(36)}` }, 23, '`ask`', 'a text of at most 35 words'],
  [
    'a toggle that is not there',
    { 24: 'do: { switch: { Z: on } }' },
    24,
    "a toggle 'Z'",
    'A, B, C'
  ],
  [
    'a wire that is not there',
    { 24: 'do: { edits: [ { off: feed wire Z } ] }' },
    24,
    "'feed wire Z' in an edit",
    'feed wire, feed link A-B'
  ],
  ['nothing done', { 24: 'do: {}' }, 24, '{} in `do`', 'at least one of switch'],
  ['about an unknown loco', { 25: 'about: [Plovr]' }, 25, "unknown 'Plovr'", 'Plover, Heron'],
  [
    'compare of an unknown meter',
    { 25: 'compare: { meter: out, with: home }' },
    25,
    "unknown 'meter out'",
    'on this board: Plover, Heron'
  ],
  ['nothing asked', { 25: [] }, 23, 'a call that asks none of them', 'about, compare, which'],
  [
    'two things asked',
    { 25: ['about: [Plover]', 'compare: { speed: Plover }'] },
    23,
    'a call that asks about and compare',
    'exactly one of about, compare, which, limit'
  ],
  ['no words for a wrong option', { 28: [] }, 26, "no words for Plover: 'west'", 'stays, west'],
  [
    'words for the right option',
    { 28: '  east: { idea: M17, at: Plover, say: "It goes east." }' },
    28,
    "words for 'east', which is what happens",
    'stays, west'
  ],
  [
    'words for no option',
    { 28: '  north: { idea: M17, at: Plover, say: "It goes north." }' },
    28,
    "unknown option 'north' for Plover",
    'stays, west'
  ],
  [
    'a pointer that points nowhere',
    { 27: '  stays: { idea: M5, at: toggle Z, say: "It is on." }' },
    27,
    "`at` points to 'toggle Z'",
    'feed wire, feed link A-B'
  ],
  [
    'a cause too long',
    { 27: `  stays: { idea: M5, at: toggle A, say: ${words(21)} }` },
    27,
    'in `wrong.stays.say`',
    'a text of at most 20 words'
  ],
  [
    'a bad code of an idea',
    { 28: '  west: { idea: M21, at: Plover, say: "It goes east." }' },
    28,
    '"M21" in `wrong.west.idea`',
    'a code from M1 to M20'
  ],
  ['two reasons', { 29: 'reasons: [ "a", "b" ]' }, 29, '["a","b"]', 'three reasons, the right one'],
  ['no twin', lines(30, 34), 23, 'a call without `twin`', 'a twin, or `wakes`'],
  ['a twin’s unknown loco', { 32: '  locos: { Curlw: B }' }, 32, "unknown loco 'Curlw'", 'Curlew'],
  ['a twin without the board’s wire', { 33: [] }, 30, "'return dropper C' in `edits`", 'toggle B'],
  ['a twin’s unknown toggle', { 34: '  do: { switch: { C: on } }' }, 34, "a toggle 'C'", 'A, B']
];

describe('readLesson(file, text): a mistake stops it', () => {
  test('the sample itself is sound', () => {
    expect(readLesson(file, sample).steps.map((step) => step.call?.id)).toEqual([
      '99-sample/1',
      undefined
    ]);
  });

  test('there are more than ten of them, all different', () => {
    const all = [...frontAndShape, ...board, ...call];
    expect(new Set(all.map(([, change]) => JSON.stringify(change))).size).toBe(all.length);
    expect(all.length).toBeGreaterThan(10);
  });

  describe.each([
    ['front matter and shape', frontAndShape],
    ['board', board],
    ['call', call]
  ])('%s', (_, mistakes) => {
    test.each(mistakes)('%s', (...[, change, line, met, allowed]) => {
      const error = thrown(() => readLesson(file, sampleWith(change)));
      expect(error).toBeInstanceOf(LessonError);
      expect(error).toMatchObject({ code: 'bad-lesson', file, line });
      const { message } = error as LessonError;
      expect(message.startsWith(`${file}:${String(line)}: `)).toBe(true);
      const [said, rest] = message.split('. Allowed: ');
      expect(said).toContain(met);
      expect(rest).toContain(allowed);
    });
  });
});
