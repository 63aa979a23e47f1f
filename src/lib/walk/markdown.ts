import { stringify } from 'yaml';
import { LessonError, readLesson } from '../lesson';
import { asked } from '../predict';
import { leastScene, leastYard } from '../share';
import { apply, places, vehicles } from '../yard';
import { answerOf } from './answered';
import { boardOf } from './play';
import type { WalkCall, WalkStep, Walkthrough } from './walkthrough';

const TO_WRITE = 'To be written';

/** Most minutes of a lesson; a step takes about one. Source: common practice. */
const MOST_MINUTES = 15;

const front = ({ title, steps }: Walkthrough): string =>
  stringify({
    title,
    minutes: Math.min(Math.max(steps.length, 1), MOST_MINUTES),
    can: `${TO_WRITE}: what the reader can do afterwards.`,
    rule: `${TO_WRITE}: the rule in one sentence.`,
    bench: `${TO_WRITE}: five minutes at one’s own yard.`
  });

/** Words in which no line begins a heading, a fence, a rule, a quotation or a table. */
const prose = (words: string): string =>
  words.trim().replace(/^(?=\s{0,3}(#{1,6}\s|```|~~~|---|===|>|\|))/gm, '\\');

const fence = (kind: 'board' | 'call', block: object): string =>
  ['```' + kind, stringify(block, { lineWidth: 0 }).trimEnd(), '```'].join('\n');

function board(yard: Walkthrough['yard'], step: WalkStep): string {
  const { version: _, ...scene } = leastScene(step.scene) as Record<string, unknown>;
  void _;
  return fence('board', { yard: leastYard(yard), ...scene, show: boardOf(yard, step).show });
}

/** The place that wrong answers point at: the first lit one that lessons know, else the controller. */
function placeOf({ yard }: Walkthrough, { scene, lit }: WalkStep): string {
  const known = [...places(apply(yard, scene)), ...Object.keys(vehicles(scene))];
  return lit.find((name) => known.includes(name)) ?? 'controller';
}

/** Words for each wrong option, to be written: the idea behind it, the place, the cause. */
function wrongs(walk: Walkthrough, step: WalkStep, { question }: WalkCall) {
  const found = answerOf(walk.yard, step.scene, { question });
  const answers = 'answers' in found ? found.answers : {};
  const at = placeOf(walk, step);
  const entries = asked(question).map(({ id, options }) => {
    const others = options.filter((option) => option !== answers[id]);
    const words = others.map((option) => [
      option,
      { idea: 'M1', at, say: `${TO_WRITE}: why it is not so, and the idea behind it.` }
    ]);
    return [id, Object.fromEntries(words)] as const;
  });
  const [only, ...more] = entries;
  return more.length === 0 ? only?.[1] : Object.fromEntries(entries);
}

const call = (walk: Walkthrough, step: WalkStep, each: WalkCall): string =>
  fence('call', {
    ask: each.ask,
    ...each.question,
    wrong: wrongs(walk, step, each),
    twin: { ask: `${TO_WRITE}: the same idea on another yard.`, ...each.question }
  });

/**
 * A walkthrough as a lesson's Markdown. What a lesson has and a walkthrough has not is drafted, and
 * says that it is to be written: the rule, the words for wrong answers and the idea behind them, the
 * twin. Words where it cannot be a lesson, with the line that is in the way.
 */
export function lessonText(
  walk: Walkthrough
): { readonly ok: string } | { readonly wrong: string } {
  const steps = walk.steps.map((step, index) =>
    [
      `## ${step.heading.replace(/\s+/g, ' ').trim() || `Step ${index + 1}`}`,
      prose(step.words),
      board(walk.yard, step),
      ...(step.call ? [call(walk, step, step.call)] : [])
    ]
      .filter((part) => part !== '')
      .join('\n\n')
  );
  const text = `---\n${front(walk)}---\n\n${steps.join('\n\n')}\n`;
  try {
    readLesson('walkthrough.md', text);
    return { ok: text };
  } catch (error) {
    if (error instanceof LessonError) return { wrong: error.message };
    throw error;
  }
}
