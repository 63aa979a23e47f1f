import { countWords, facing, joinWords, once, roads, type Scene, type Yard } from '../yard';
import { callAdvice } from './callAdvice';
import { falseClaims } from './claims';
import { GOOD_CHANGES, GOOD_WORDS } from './limits';
import { isThere, roadOfLit } from './lit';
import { named } from './named';
import { plainText } from './plain';
import { changesSince, isTold } from './told';
import type { Walkthrough, WalkStep } from './walkthrough';

/** What may make an explanation fail, and what to do about it. */
export interface Advice {
  /** The step, from 0; none where the whole is meant. */
  readonly step?: number;
  readonly words: string;
}

/** A step with what it is judged by. */
interface Judged {
  readonly yard: Yard;
  readonly step: WalkStep;
  readonly before: WalkStep | undefined;
  /** Heading and words, without signs of Markdown. */
  readonly text: string;
}

type Rule = (judged: Judged) => readonly string[];

const SECOND_IDEA =
  /\b(and also|as well as|by the way|in addition|besides|another thing|meanwhile)\b/i;
/** Rows further apart than this are not looked at together. Source: common practice. */
const NEAR_ROWS = 2;

/** Whether two roads are seen together: near rows, or end to end. */
function areNear(yard: Yard, scene: Scene, [one, other]: readonly [string, string]): boolean {
  const all = roads(yard);
  const meet = facing(yard, scene.deck).some(({ deckRoad, fixed }) =>
    [deckRoad, fixed].every((road) => [one, other].includes(road))
  );
  return meet || Math.abs(all.indexOf(one) - all.indexOf(other)) <= NEAR_ROWS;
}

const twoIdeas: Rule = ({ yard, step, text }) => {
  const joint = SECOND_IDEA.exec(text)?.[0];
  const lit = step.lit.flatMap((name) => roadOfLit(yard, step.scene, name) ?? []);
  const apart = lit
    .flatMap((one, index) => lit.slice(index + 1).map((other) => [one, other] as const))
    .find((pair) => !areNear(yard, step.scene, pair));
  return [
    ...(joint ? [`“${joint}” begins a second idea: give it a step of its own.`] : []),
    ...(apart
      ? [`Roads ${joinWords(apart, 'and')} are lit, far apart: light one place, or make two steps.`]
      : [])
  ];
};

const length: Rule = ({ step, text }) => {
  const count = countWords(plainText(step.words));
  if (count > GOOD_WORDS)
    return [
      `${count} words: at most ${GOOD_WORDS} are read beside a drawing. Cut, or split the step.`
    ];
  return text.trim() === '.' || count === 0 ? ['No words yet: one idea, in a few sentences.'] : [];
};

const lit: Rule = ({ yard, step, text }) => {
  const lost = step.lit.filter((name) => !isThere(yard, step.scene, name));
  const dark = named(yard, step.scene, text)
    .filter(({ isLit }) => !isLit(step.lit))
    .map(({ name }) => name);
  return [
    ...(step.lit.length === 0 ? ['Nothing is lit: light the one place the words are about.'] : []),
    ...lost.map((name) => `“${name}” is lit, but is not on this board: light something else.`),
    ...(step.lit.length > 0 && dark.length > 0
      ? [`The words name ${joinWords(dark, 'and')}, not lit: light it, or leave it out.`]
      : [])
  ];
};

const moving: readonly string[] = ['deck', 'pin', 'plug'];

const changes: Rule = ({ yard, step, before, text }) => {
  const all = before ? changesSince(yard, before, step) : [];
  const silent = all
    .filter((change) => !isTold(yard, change, text))
    .map(({ place }) => (moving.includes(place) ? `the ${place}` : place));
  return [
    ...(silent.length > 0
      ? [
          `${sentenceCase(joinWords(silent.slice(0, 3), 'and'))} changed since the step before: say so, or set it back.`
        ]
      : []),
    ...(all.length > GOOD_CHANGES
      ? [
          `${all.length} things change from the step before: at most ${GOOD_CHANGES} are seen at once.`
        ]
      : [])
  ];
};

const sentenceCase = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

const MINIMISING = /\b(simply|just|obviously|of course|clearly|basically|merely|easy|easily)\b/i;
const SIDES =
  /\b(?:the|to|on|from|its|your)\s+(left|right)\b(?! (?:answer|call|one|way|time))|\b(left|right)(?:-hand|most|wards?)\b|\b(left|right)\s+(?:of|side|end|rail|hand)\b/i;

const wording: Rule = ({ text }) => {
  const small = MINIMISING.exec(text)?.[0];
  const [, ...sides] = SIDES.exec(text) ?? [];
  const side = sides.find(Boolean);
  return [
    ...(small ? [`“${small}” helps nobody who does not see it yet: leave it out.`] : []),
    ...(side ? [`“${side}” depends on where one stands: say west or east, north or south.`] : [])
  ];
};

const claims: Rule = ({ yard, step, text }) => {
  const wrong = falseClaims(yard, step.scene, text);
  return wrong.length === 0
    ? []
    : [
        `The engine disagrees: ${joinWords(wrong.slice(0, 3), 'and')}. Change the words or the board.`
      ];
};

const rules: readonly Rule[] = [
  length,
  twoIdeas,
  lit,
  changes,
  claims,
  wording,
  ({ yard, step }) => callAdvice(yard, step)
];

function judge(yard: Yard, step: WalkStep, before: WalkStep | undefined): readonly string[] {
  const judged = { yard, step, before, text: plainText(`${step.heading}. ${step.words}`) };
  return rules.flatMap((rule) => rule(judged));
}

/** Stands for the step before the first one. */
const none = {};
/** A step is judged once, as long as it and the one before it stay the same. */
const known = once((yard: Yard) =>
  once((step: WalkStep) =>
    once((before: WalkStep | typeof none) =>
      judge(yard, step, 'scene' in before ? before : undefined)
    )
  )
);

/** What may make one step fail, in words with what to do; `before` is the step before it. */
export const stepAdvice = (yard: Yard, step: WalkStep, before?: WalkStep): readonly string[] =>
  known(yard)(step)(before ?? none);

/** What may make the whole fail, whatever its steps say. */
export const wholeAdvice = ({ steps }: Pick<Walkthrough, 'steps'>): readonly string[] =>
  steps.some(({ call }) => call)
    ? []
    : ['No call in the whole: ask the reader once what will happen, best about half way.'];

/** What may make a walkthrough fail, step by step. Nothing of it is forbidden. */
export const advice = (walk: Walkthrough): readonly Advice[] => [
  ...wholeAdvice(walk).map((words) => ({ words })),
  ...walk.steps.flatMap((step, index) =>
    stepAdvice(walk.yard, step, walk.steps[index - 1]).map((words) => ({ step: index, words }))
  )
];
