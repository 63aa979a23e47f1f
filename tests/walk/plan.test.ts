import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { countWords, readLesson } from '../../src/lib/lesson';
import { optionsOf, plans, rightOf, roundOf, type Round } from '../../src/lib/walk';

const folder = 'content/lessons';
const planned = new Set(plans.flatMap(({ calls }) => calls));
const lessons = readdirSync(folder)
  .filter((name) => [...planned].some((id) => id.startsWith(name.replace('.md', '/'))))
  .map((name) => readLesson(`${folder}/${name}`, readFileSync(`${folder}/${name}`, 'utf8')));
const rounds = new Map(
  lessons.flatMap((lesson) =>
    lesson.steps.flatMap((step): [string, Round][] => {
      const round = roundOf(lesson, step);
      return round ? [[round.id, round]] : [];
    })
  )
);

describe.each([...planned])('the call %s of a plan', (id) => {
  const round = rounds.get(id) as Round;

  test('is in the lessons, with three or four options, a twin and a place to look at', () => {
    expect(round, id).toBeDefined();
    for (const asking of [round, round.twin as NonNullable<Round['twin']>]) {
      expect([3, 4]).toContain(optionsOf(asking.question).length);
      expect(countWords(asking.ask)).toBeLessThanOrEqual(35);
      expect(rightOf(asking), 'the engine answers it').toBeGreaterThanOrEqual(0);
    }
    expect(round.look.length).toBeGreaterThan(0);
  });
});

test('a round takes four to six minutes, with some left for the bench', () => {
  for (const { calls, minutes, id } of plans) {
    expect(minutes / calls.length, id).toBeGreaterThanOrEqual(6);
    expect(new Set(calls).size).toBe(calls.length);
  }
});

test('the right answers of a plan are not all at one letter', () => {
  for (const { calls } of plans) {
    const places = calls.map((id) => rightOf(rounds.get(id) as Round));
    expect(new Set(places).size).toBeGreaterThan(1);
  }
});
