import { describe, expect, test } from 'vitest';
import { PlaceError } from '../../src/lib/yard';
import {
  answer,
  answerKey,
  asked,
  hides,
  QuestionError,
  questionKeys
} from '../../src/lib/predict';
import { moment, thrown } from '../yard/build';
import { answers, questionOf, type QuestionInput } from './build';

const scene = {
  locos: { Plover: 'A' },
  switches: { A: true },
  controller: 0.6,
  edits: [{ meter: 'out', in: 'feed wire' }]
};
const of = { feed: { controller: 0 }, home: { controller: 1 } };

describe('answer(question): a question that cannot be put', () => {
  test.each<[string, QuestionInput, string, string]>([
    [
      'no kind',
      {},
      'none of them',
      'exactly one of about, compare, which, limit, falls, lamps, reads, testLamp, halve, fault'
    ],
    [
      'two kinds',
      { about: ['Plover'], compare: { speed: 'Plover' } },
      'about and compare',
      'exactly one of about, compare, which, limit, falls, lamps, reads, testLamp, halve, fault'
    ],
    ['a loco that is not there', { about: ['Heron'] }, "unknown 'Heron'", 'Plover, meter out'],
    [
      'a loco to compare that is not there',
      { compare: { speed: 'Heron' } },
      "unknown 'Heron'",
      'Plover, meter out'
    ],
    [
      'a loco of which that is not there',
      { which: { loco: 'Heron', would: 'run', of } },
      "unknown 'Heron'",
      'Plover, meter out'
    ],
    [
      'a meter that is not there',
      { compare: { meter: 'home', with: 'out' } },
      "unknown 'meter home'",
      'Plover, meter out'
    ],
    [
      'a meter to compare with that is not there',
      { compare: { meter: 'out', with: 'home' } },
      "unknown 'meter home'",
      'Plover, meter out'
    ],
    [
      'an answer that is no option',
      { compare: { speed: 'Plover', options: ['stops', 'faster'] } },
      `options ["stops","faster"] without the engine's answer 'about the same'`,
      'options with it'
    ]
  ])('%s', (_, question, met, allowed) => {
    const error = thrown(() => answers(question, { scene }));
    expect(error).toBeInstanceOf(QuestionError);
    expect(error).toMatchObject({ code: 'bad-question', met });
    expect((error as QuestionError).allowed).toContain(allowed);
    expect((error as Error).message).toContain(`The question has ${met}; allowed: `);
  });

  test('something done to a place that is not there is refused with those that are', () => {
    const question = { do: { edits: [{ off: 'return dropper Z' }] }, about: ['Plover'] };
    expect(thrown(() => answers(question, { scene }))).toBeInstanceOf(PlaceError);
  });
});

describe('questionEntries: what a lesson may write', () => {
  test.each<[string, unknown, string]>([
    ['about nobody', { about: [] }, 'one to three locos'],
    ['about four', { about: ['A', 'B', 'C', 'D'] }, 'one to three locos'],
    [
      'compare what is neither',
      { compare: { volts: 'A' } },
      '{ speed: loco } with options of stops, slower, about the same, faster, or'
    ],
    ['a made-up option', { compare: { speed: 'Plover', options: ['flies'] } }, 'stops'],
    ['which of one', { which: { loco: 'Plover', would: 'run', of: { a: of.feed } } }, 'two or'],
    ['which would fly', { which: { loco: 'Plover', would: 'fly', of } }, 'run, stop or limit'],
    ['the limit of a loco', { limit: 'Plover' }, 'controller'],
    ['nothing done', { do: {}, about: ['Plover'] }, 'at least one of switch']
  ])('refuses %s', (_, input, allowed) => {
    expect(() => questionOf(input as QuestionInput)).toThrow(allowed);
  });
});

describe('asked(question), hides(question)', () => {
  test.each<[QuestionInput, { id: string; options: string[] }[], string[]]>([
    [
      { about: ['Plover', 'Heron'] },
      [
        { id: 'Plover', options: ['stays', 'west', 'east'] },
        { id: 'Heron', options: ['stays', 'west', 'east'] }
      ],
      ['Plover', 'Heron']
    ],
    [
      { compare: { speed: 'Plover' } },
      [{ id: 'Plover', options: ['stops', 'slower', 'about the same', 'faster'] }],
      ['Plover']
    ],
    [
      { compare: { meter: 'home', with: 'out', options: ['less', 'the same'] } },
      [{ id: 'meter home', options: ['less', 'the same'] }],
      ['meter home']
    ],
    [
      { which: { loco: 'Plover', would: 'run', of } },
      [{ id: 'Plover', options: ['feed', 'home', 'each of them', 'none of them'] }],
      ['Plover']
    ],
    [
      { which: { would: 'limit', of, each: 'either', none: 'neither' } },
      [{ id: 'controller', options: ['feed', 'home', 'either', 'neither'] }],
      []
    ],
    [
      { limit: 'controller' },
      [{ id: 'controller', options: ['it limits', 'it goes on as before'] }],
      []
    ]
  ])('%j', (input, what, hidden) => {
    const question = questionOf(input);
    expect(asked(question)).toEqual(what);
    expect(hides(question)).toEqual(hidden);
  });

  test('questionKeys: the kinds there are', () => {
    expect(questionKeys).toEqual([
      'about',
      'compare',
      'which',
      'limit',
      'falls',
      'lamps',
      'reads',
      'testLamp',
      'halve',
      'fault'
    ]);
  });

  test('answerKey: the yard’s title is added where there is a pair', () => {
    expect(answerKey('Heron', undefined)).toBe('Heron');
    expect(answerKey('Heron', 'ring')).toBe('Heron, ring');
  });
});

describe('answer(question).played', () => {
  test('tells the scenes before and after, and plays others from the same start', () => {
    const { yard, scene: start } = moment({ deckRoads: 2 }, scene);
    const question = questionOf({ do: { controller: 0 }, about: ['Plover'] });
    const { played } = answer(question, yard, start);
    expect(played.before.controller).toBe(0.6);
    expect(played.before.locos['Plover']?.speed).toBeGreaterThan(0.05);
    expect(played.after.controller).toBe(0);
    expect(played.after.locos['Plover']?.speed).toBe(0);
    expect(played.reading.amps('Plover')).toBe(0);
    const other = played.play({ controller: -0.6 });
    expect(other.before).toEqual(played.before);
    expect(other.after.locos['Plover']?.speed).toBeLessThan(0);
  });
});
