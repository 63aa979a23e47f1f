import { QuestionError, asked, type Question } from '../predict';
import { entries } from './answered';
import { readBlock, type Source } from './block';
import type { BoardData } from './board';
import { LessonError } from './error';
import { CallSchema, type CallData, type Reading } from './schema';
import { readTwin } from './twin';
import { wrongWords } from './wrong';

/**
 * Reads a call block against its board; the engine answers it, and the words must fit that answer.
 * @throws LessonError
 */
export function readCall(source: Source, id: string, board: BoardData): CallData {
  const block = readBlock(source, CallSchema);
  const reading: Reading = { file: source.file, block, board };
  const { ask, right, reasons, twin, wakes, opener, wrong, ...question } = block.value;
  void wrong;
  mustAsk(source, question);
  if (!twin && !wakes) {
    throw new LessonError(source.file, source.line, 'a call without `twin`', 'a twin, or `wakes`');
  }
  const all = entries(reading, question);
  return {
    id,
    ask,
    question,
    wrong: wrongWords(reading, all),
    right,
    reasons,
    twin: twin && readTwin(reading, twin),
    wakes,
    opener
  };
}

function mustAsk(source: Source, question: Question): void {
  try {
    asked(question);
  } catch (error) {
    if (!(error instanceof QuestionError)) throw error;
    throw new LessonError(source.file, source.line, `a call that asks ${error.met}`, error.allowed);
  }
}
