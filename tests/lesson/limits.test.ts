import { describe, expect, test } from 'vitest';
import { readIdeas, type CallData } from '../../src/lib/lesson';
import { asked } from '../../src/lib/predict';
import { glossary } from '../../src/lib/server/glossary';
import { countWords } from '../../src/lib/yard';
import { filesIn, lessons, pages, type Placed } from './files';
import { measure, sentences } from './measure';

const callsOf = ({ lesson }: Placed): readonly CallData[] =>
  lesson.steps.flatMap((step) => step.call ?? []);

const causes = (page: Placed): readonly string[] =>
  callsOf(page).flatMap((call) =>
    Object.values(call.wrong).flatMap((options) => Object.values(options).map(({ say }) => say))
  );

const stems = (page: Placed): readonly string[] =>
  callsOf(page).flatMap((call) => [call.ask, ...(call.twin ? [call.twin.ask] : [])]);

/** All that is read in a lesson in whole sentences. */
const wholeText = (page: Placed): readonly string[] =>
  [
    ...page.lesson.steps.map((step) => step.prose),
    ...stems(page),
    ...causes(page),
    ...callsOf(page).flatMap(({ right, twin }) => [right, twin?.intro, twin?.right]),
    page.lesson.meta.rule,
    page.lesson.meta.bench
  ].filter((text) => text !== undefined);

/** Those of `texts` that a limit on their words does not let through. */
const over = (most: number, texts: readonly string[]): readonly string[] =>
  texts.filter((text) => countWords(text) > most);

const terms = new Set(glossary.flatMap((part) => part.terms.map(({ word }) => word)));
const cards = new Set(readIdeas(filesIn('content/ideas')).map(({ code }) => code));

describe('measure(text)', () => {
  test('counts words and sentences as a reader does', () => {
    const text = 'Plover takes 0.20 A. It runs *east*!\n\nWhy? "It is on." So it goes';
    expect(sentences(text)).toEqual([
      'Plover takes 0.20 A.',
      'It runs east!',
      'Why?',
      '"It is on."',
      'So it goes'
    ]);
    expect(measure([text])).toMatchObject({ words: 14, sentences: 5, mean: 2.8, longest: 4 });
  });

  test('finds a plain text easy and a stiff one hard', () => {
    expect(measure(['The loco runs east. It stops.']).ease).toBeGreaterThan(90);
    const stiff =
      'Electrical continuity necessitates simultaneous availability of outgoing and returning conductors.';
    expect(measure([stiff]).ease).toBeLessThan(30);
  });
});

describe.each(pages.map((page) => ({ file: page.file, page })))('$file', ({ page }) => {
  const { lesson } = page;

  test('no stars in the words of a call, where they would be shown', () => {
    const said = [
      ...stems(page),
      ...causes(page),
      ...callsOf(page).flatMap(({ right }) => right ?? [])
    ];
    expect(said.filter((text) => text.includes('*'))).toEqual([]);
  });

  test('at most 60 words a step', () => {
    expect(lesson.steps.length).toBeGreaterThan(0);
    expect(
      over(
        60,
        lesson.steps.map((step) => step.prose)
      )
    ).toEqual([]);
  });

  test('sentences of at most 14 words on the mean, and none over 25', () => {
    const { mean, longest } = measure(wholeText(page));
    expect(mean).toBeLessThanOrEqual(14);
    expect(longest).toBeLessThanOrEqual(25);
    const prose = measure(lesson.steps.map((step) => step.prose));
    expect(prose.mean).toBeLessThanOrEqual(14);
  });

  test('reading ease of 65 or more', () => {
    expect(measure(wholeText(page)).ease).toBeGreaterThanOrEqual(65);
    expect(measure(lesson.steps.map((step) => step.prose)).ease).toBeGreaterThanOrEqual(65);
  });

  test('at most three new terms; each is marked where it is new, and in the glossary', () => {
    expect(lesson.meta.terms.length).toBeLessThanOrEqual(3);
    expect(lesson.meta.terms.filter((term) => !terms.has(term))).toEqual([]);
    const marked = lesson.steps.flatMap((step) =>
      [...step.prose.matchAll(/\*([^*]+)\*/g)].map(([, term]) => (term as string).toLowerCase())
    );
    const missing = lesson.meta.terms.filter((term) => {
      const small = term.toLowerCase();
      return !marked.includes(small) && !marked.includes(`${small}s`);
    });
    expect(missing).toEqual([]);
  });

  test('questions of at most 35 words, causes of at most 20', () => {
    expect(stems(page).length).toBeGreaterThan(0);
    expect(over(35, stems(page))).toEqual([]);
    expect(over(20, causes(page))).toEqual([]);
  });

  test('three options, four at most', () => {
    const questions = callsOf(page).flatMap((call) => [
      call.question,
      ...(call.twin ? [call.twin.question] : [])
    ]);
    for (const { options } of questions.flatMap((question) => asked(question))) {
      expect(options.length).toBeGreaterThanOrEqual(3);
      expect(options.length).toBeLessThanOrEqual(4);
      expect(new Set(options).size).toBe(options.length);
    }
  });

  test('each wrong option has an idea with a card, and every call but a wake-up a twin', () => {
    for (const call of callsOf(page)) {
      const wrongs = Object.values(call.wrong).flatMap((options) => Object.values(options));
      expect(wrongs.length).toBeGreaterThanOrEqual(2);
      expect(wrongs.filter(({ idea }) => !cards.has(idea))).toEqual([]);
      expect(call.twin !== undefined || call.wakes !== undefined).toBe(true);
    }
  });
});

describe.each(lessons.map((page) => ({ file: page.file, page })))('$file', ({ page }) => {
  const wakes = callsOf(page).map((call) => call.wakes);

  test('two to four calls of its own, the first of them asks "do you need this?"', () => {
    const own = callsOf(page).filter((call) => call.wakes === undefined);
    expect(own.length).toBeGreaterThanOrEqual(2);
    expect(own.length).toBeLessThanOrEqual(4);
    expect(own.map((call) => call.opener)).toEqual(own.map((_, index) => index === 0));
  });

  test('from the third on, it begins with two wake-ups: the last lesson, and one farther back', () => {
    const { number } = page;
    // Numbers are those of the whole arc: the last lesson is the one before, whatever its number.
    const before = lessons[lessons.indexOf(page) - 1]?.number ?? 0;
    const expected = number < 3 ? [] : [before, Math.max(1, number - 3)];
    const found = wakes.filter((each) => each !== undefined);
    expect(found).toHaveLength(expected.length);
    expect(wakes.slice(0, found.length)).toEqual(found);
    const [last, back] = [Math.max(...found, 0), Math.min(...found, number)];
    expect(last).toBe(expected[0] ?? 0);
    expect(back).toBeLessThanOrEqual(expected[1] ?? number);
  });
});

test('content/ideas: a card’s sentences are as plain as a lesson’s', () => {
  for (const { sentences: three } of readIdeas(filesIn('content/ideas'))) {
    const { longest, mean, ease } = measure(three);
    expect(longest).toBeLessThanOrEqual(25);
    expect(mean).toBeLessThanOrEqual(14);
    expect(ease).toBeGreaterThanOrEqual(65);
  }
});
