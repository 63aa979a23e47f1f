import { LessonError } from './error';
import type { Source } from './block';

/** A step of a lesson: prose between two headings, with its blocks taken out. */
export interface RawStep {
  readonly heading: string;
  readonly line: number;
  readonly prose: string;
  readonly blocks: readonly (Source & { readonly kind: BlockKind })[];
}

const blockKinds = ['board', 'call'] as const;
export type BlockKind = (typeof blockKinds)[number];

/** Front matter and steps of a lesson file. */
export function split(
  file: string,
  text: string
): { readonly front: Source; readonly steps: readonly RawStep[] } {
  const lines = text.split(/\r?\n/);
  const close = lines.indexOf('---', 1);
  if (lines[0] !== '---' || close < 0) {
    throw new LessonError(file, 1, 'no front matter', "YAML between two lines of '---' at the top");
  }
  const front = { file, line: 2, yaml: lines.slice(1, close).join('\n') };
  return { front, steps: steps(file, lines, close + 1) };
}

function steps(file: string, lines: readonly string[], from: number): RawStep[] {
  const found: {
    heading: string;
    line: number;
    prose: string[];
    blocks: RawStep['blocks'][number][];
  }[] = [];
  for (let i = from; i < lines.length; i++) {
    const line = lines[i] as string;
    const heading = /^## (.+)$/.exec(line)?.[1];
    const fence = /^```\s*(\S*)/.exec(line);
    if (heading) found.push({ heading, line: i + 1, prose: [], blocks: [] });
    const step = found.at(-1);
    if (!step) {
      if (line.trim())
        throw new LessonError(file, i + 1, 'text before the first step', "a '## heading' first");
    } else if (fence) {
      const end = endOfFence(file, lines, i);
      const yaml = lines.slice(i + 1, end).join('\n');
      step.blocks.push({ kind: blockKind(file, i + 1, fence[1] ?? ''), file, line: i + 2, yaml });
      i = end;
    } else if (!heading) {
      step.prose.push(line);
    }
  }
  if (found.length === 0)
    throw new LessonError(file, lines.length, 'no step', "at least one '## heading'");
  return found.map((step) => ({ ...step, prose: step.prose.join('\n').trim() }));
}

function endOfFence(file: string, lines: readonly string[], start: number): number {
  const end = lines.findIndex((line, index) => index > start && /^```\s*$/.test(line));
  if (end < 0)
    throw new LessonError(file, start + 1, 'a block without an end', 'a closing line of ```');
  return end;
}

function blockKind(file: string, line: number, word: string): BlockKind {
  const kind = blockKinds.find((each) => each === word);
  if (!kind)
    throw new LessonError(file, line, `a block of kind '${word}'`, blockKinds.join(' or '));
  return kind;
}
