import * as v from 'valibot';
import { readBlock } from './block';
import { readBoard, type BoardData } from './board';
import { readCall } from './call';
import { LessonError } from './error';
import type { CallData } from './schema';
import { split, type RawStep } from './split';

const MetaSchema = v.strictObject({
  title: v.string('a title'),
  minutes: v.pipe(v.number('whole minutes'), v.integer(), v.minValue(1), v.maxValue(15)),
  /** What the reader can do afterwards. */
  can: v.string(),
  /** Words that are new here; each stands in the glossary. */
  terms: v.optional(v.pipe(v.array(v.string()), v.maxLength(3, 'three new terms at most')), []),
  rule: v.string('the rule in one sentence'),
  bench: v.string('five minutes at your own yard'),
  /** Whether the reader's own wrong calls from the lessons before come first. */
  own: v.optional(v.boolean('true or false'), false)
});
export type Meta = Readonly<v.InferOutput<typeof MetaSchema>>;

/** A step as the page plays it. */
export interface StepData {
  readonly heading: string;
  readonly line: number;
  readonly prose: string;
  readonly board?: BoardData | undefined;
  readonly call?: CallData | undefined;
}

/** A lesson, read and checked. */
export interface Lesson {
  readonly slug: string;
  readonly meta: Meta;
  readonly front: string;
  readonly steps: readonly StepData[];
}

/** File name without folder and ending: `01-out-and-home`. */
export const slugOf = (file: string): string =>
  (file.split('/').at(-1) as string).replace(/\.md$/, '');

/**
 * Reads a lesson file: front matter, steps, boards and calls, each call answered by the engine.
 * @throws LessonError naming file, line, what was met and what is allowed.
 */
export function readLesson(file: string, text: string): Lesson {
  const { front, steps } = split(file, text);
  const slug = slugOf(file);
  let last: BoardData | undefined;
  const read = steps.map((raw, index) => {
    const step = readStep(raw, `${slug}/${index + 1}`, last);
    last = step.board ?? last;
    return step;
  });
  return { slug, meta: readBlock(front, MetaSchema).value, front: front.yaml, steps: read };
}

function readStep(raw: RawStep, id: string, last: BoardData | undefined): StepData {
  const boards = raw.blocks.filter((block) => block.kind === 'board');
  const calls = raw.blocks.filter((block) => block.kind === 'call');
  for (const extra of [boards[1], calls[1]]) {
    if (extra)
      throw new LessonError(
        extra.file,
        extra.line - 1,
        `a second ${extra.kind} in one step`,
        'one of each a step'
      );
  }
  const [boardBlock, callBlock] = [boards[0], calls[0]];
  const board = boardBlock ? readBoard(boardBlock) : callBlock && last;
  if (callBlock && !board)
    throw new LessonError(
      callBlock.file,
      callBlock.line - 1,
      'a call without a board',
      'a board block above it'
    );
  const { heading, line, prose } = raw;
  return {
    heading,
    line,
    prose,
    board,
    call: callBlock && board && readCall(callBlock, id, board)
  };
}
