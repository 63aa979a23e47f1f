import { LessonError } from './error';
import type { Idea } from './idea';
import type { Lesson, StepData } from './lesson';

/** A step's board and call, as the page's player takes them. */
export interface Play {
  readonly heading: string;
  readonly board: NonNullable<StepData['board']>;
  readonly call?: StepData['call'];
  /** The cards which a wrong call here can bring. */
  readonly ideas: Readonly<Record<string, Idea>>;
  /** Address of the first call that is no opener and wakes nothing up. */
  readonly calls: string;
}

/** JSON that can stand inside a script element. */
const inScript = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c');

/** Address of a step on its page. */
const anchor = (index: number): string => `step-${index + 1}`;

/** Ids of the calls in steps before this one. */
const callsBefore = ({ steps }: Lesson, index: number): readonly string[] =>
  steps.slice(0, index).flatMap(({ call }) => (call ? [call.id] : []));

function playOf(
  file: string,
  step: StepData,
  { ideas, calls }: { readonly ideas: readonly Idea[]; readonly calls: string }
): Play | undefined {
  if (!step.board) return undefined;
  const wrongs = Object.values(step.call?.wrong ?? {}).flatMap((each) => Object.values(each));
  const cards = wrongs.map(({ idea }) => {
    const card = ideas.find((each) => each.code === idea);
    if (card) return [idea, card] as const;
    const known = ideas.map((each) => each.code).join(', ');
    throw new LessonError(file, step.line, `no card for the idea '${idea}'`, known);
  });
  const { heading, board, call } = step;
  return { heading, board, call, calls, ideas: Object.fromEntries(cards) };
}

/**
 * The lesson as Markdown with components: each step is a section, its blocks are one player.
 * @throws LessonError when a wrong idea has no card.
 */
export function toPage(file: string, lesson: Lesson, ideas: readonly Idea[]): string {
  const first = lesson.steps.findIndex(({ call }) => call && !call.opener && !call.wakes);
  const calls = `#${anchor(Math.max(first, 0))}`;
  const plays = lesson.steps.map((step) => playOf(file, step, { ideas, calls }));
  const sections = lesson.steps.map((step, index) =>
    [
      `<Step id="${anchor(index)}" after={${JSON.stringify(callsBefore(lesson, index))}}>`,
      '',
      '<div class="words">',
      '',
      `## ${step.heading}`,
      '',
      step.prose,
      '',
      '</div>',
      ...(step.board ? ['', `<Player play={plays[${index}]} />`, ''] : []),
      '</Step>'
    ].join('\n')
  );
  return [
    '---',
    lesson.front,
    '---',
    '<script>',
    "import { Player, Step } from '$lib/ui';",
    `const plays = ${inScript(plays)};`,
    '</script>',
    '',
    ...sections.map((section) => `${section}\n`)
  ].join('\n');
}
