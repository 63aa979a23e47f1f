import * as v from 'valibot';
import { isMap, isPair, LineCounter, parseDocument, type Document } from 'yaml';
import { admit, BorderError } from '../yard';
import { LessonError } from './error';

/** A fenced block, or the front matter: YAML with the line at which it starts in its file. */
export interface Source {
  readonly file: string;
  /** Line of the block's first line of YAML. */
  readonly line: number;
  readonly yaml: string;
}

/** A block read through its schema, and the way back from a key to its line. */
export interface Block<T> {
  readonly value: T;
  /** Line in the file of the value at `path`. */
  readonly lineOf: (path: readonly (string | number)[]) => number;
}

/**
 * Reads a YAML block through `schema`.
 * @throws LessonError naming file, line, what was met and what is allowed.
 */
export function readBlock<S extends v.GenericSchema>(
  source: Source,
  schema: S
): Block<v.InferOutput<S>> {
  const counter = new LineCounter();
  const document = parseDocument(source.yaml, { lineCounter: counter });
  const lineAt = (offset: number) => source.line + counter.linePos(offset).line - 1;
  const broken = document.errors[0];
  if (broken) {
    const [what] = broken.message.split(' at line');
    throw new LessonError(source.file, lineAt(broken.pos[0]), what as string, 'valid YAML');
  }
  const lineOf = (path: readonly (string | number)[]) => lineAt(offsetOf(document, path));
  try {
    return { value: admit('block', schema, document.toJS() ?? {}), lineOf };
  } catch (error) {
    throw placedError(error, source.file, lineOf);
  }
}

/** A border error told with file and line; anything else passes unchanged. */
export function placedError(
  error: unknown,
  file: string,
  lineOf: (path: readonly (string | number)[]) => number
): unknown {
  const finding = error instanceof BorderError ? error.findings[0] : undefined;
  if (!finding) return error;
  const key = finding.path.length > 0 ? ` in \`${finding.path.join('.')}\`` : '';
  return new LessonError(file, lineOf(finding.path), `${finding.met}${key}`, finding.allowed);
}

/** Offset of the key at `path`, or of the nearest key around it. */
function offsetOf(document: Document, path: readonly (string | number)[]): number {
  for (let length = path.length; length > 0; length--) {
    const inner = path.slice(0, length);
    const parent = document.getIn(inner.slice(0, -1), true) ?? document.contents;
    const key = String(inner.at(-1));
    const pair = isMap(parent)
      ? parent.items.find((item) => isPair(item) && String(item.key) === key)
      : undefined;
    const node = (pair?.key ?? document.getIn(inner, true)) as { range?: number[] } | undefined;
    if (node?.range) return node.range[0] as number;
  }
  return 0;
}
