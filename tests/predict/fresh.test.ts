import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readIdeas } from '../../src/lib/lesson';
import { settle } from '../../src/lib/motion';
import { answer, asked, families, fresh, watch, wrongWords } from '../../src/lib/predict';
import { act, apply, countWords, fit, places, read } from '../../src/lib/yard';
import { filesIn, lessons } from '../lesson/files';

const cards = new Set(readIdeas(filesIn('content/ideas')).map(({ code }) => code));
const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at);
/** Seeds of the properties: those that a reader meets, and far ones. */
const seeds = fc.oneof(fc.nat(500), fc.nat(10_000_000));

describe('families', () => {
  test('each has a name of its own and wakes up a lesson that there is', () => {
    expect(new Set(families.map(({ id }) => id)).size).toBe(families.length);
    const there = lessons.map(({ number }) => number);
    expect(families.filter(({ lesson }) => !there.includes(lesson))).toEqual([]);
  });
});

describe.each(families.map((family) => ({ id: family.id, family })))('$id', ({ family }) => {
  test('fresh(seed) gives the same call for the same seed, of a scene that fits its yard', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const made = fresh(family, seed);
        expect(JSON.stringify(fresh(family, seed))).toBe(JSON.stringify(made));
        expect(fit('scene', made.yard, made.scene)).toEqual(made.scene);
        expect(countWords(`${made.tells} ${made.ask}`)).toBeLessThanOrEqual(35);
        expect(`${made.tells} ${made.ask}`).not.toMatch(/undefined|\bleft\b|\bright\b/);
        for (const { id, options } of asked(made.question)) {
          expect(`${made.tells} ${made.ask} ${id}`).toContain(id);
          expect(new Set(options).size).toBe(options.length);
          expect(options.length).toBeGreaterThanOrEqual(3);
        }
      }),
      { numRuns: 30, seed: 7 }
    );
  });

  test('no two of the first 120 seeds are alike to the eye', () => {
    const seen = upTo(120).map((seed) => {
      const { yard, scene, question, tells, ask } = fresh(family, seed);
      const locos = Object.entries(scene.locos).map(([name, { road, faces }]) => [
        name,
        road,
        faces
      ]);
      return JSON.stringify([yard, { ...scene, locos }, question, tells, ask]);
    });
    expect(new Set(seen).size).toBe(seen.length);
  });

  test('over 100 seeds the engine’s answer is among the options, and no option has more than 70 %', () => {
    const given = upTo(100).flatMap((seed) => {
      const { question, yard, scene } = fresh(family, seed);
      const { answers } = answer(question, yard, scene);
      return asked(question).map(({ id, options }) => {
        expect(options).toContain(answers[id]);
        return answers[id] as string;
      });
    });
    const shares = [...new Set(given)].map(
      (option) => given.filter((each) => each === option).length / given.length
    );
    expect(shares.length).toBeGreaterThanOrEqual(2);
    expect(Math.max(...shares)).toBeLessThanOrEqual(0.7);
  });

  test('wrongWords(call) ties every wrong option to a card and a place that is there', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const made = fresh(family, seed);
        const { question, yard, scene } = made;
        const { answers, played } = answer(question, yard, scene);
        const wrong = wrongWords(made);
        const after = question.do ? act(yard, scene, question.do) : scene;
        const there = [
          ...places(apply(yard, scene)),
          ...places(apply(yard, after)),
          ...Object.keys(scene.locos)
        ];
        for (const { id, options } of asked(question)) {
          const words = wrong[id] ?? {};
          expect(Object.keys(words)).toEqual(options.filter((option) => option !== answers[id]));
          for (const { idea, at, say } of Object.values(words)) {
            expect(cards).toContain(idea);
            expect(there).toContain(at);
            expect(countWords(say)).toBeLessThanOrEqual(20);
            expect(say).not.toMatch(/undefined/);
            // "Open at …" and "… is open" are the engine's own words for the place.
            const why = read(yard, after).why(scene.locos[id]?.road as string);
            if (/is (still )?open/.test(say) && question.about) {
              expect(why.breaks).toContain(at);
            }
            if (/is whole|are both closed|whole way home/.test(say) && question.about) {
              expect(why.state).toBe('loop');
            }
          }
        }
        expect(played.before).toEqual(settle(yard, scene));
      }),
      { numRuns: 25, seed: 11 }
    );
  });

  test('no loco meets another, and where speeds are compared none meets its end', () => {
    for (const seed of upTo(25)) {
      const { question, yard, scene } = fresh(family, seed);
      const { events } = watch(yard, settle(yard, scene), question.do);
      const kinds = events.map(({ kind }) => kind);
      expect(kinds).not.toContain('bump');
      if (question.compare) expect(kinds).toEqual([]);
    }
  });
});
