import type { Question } from '../predict';
import { actionWords, joinWords, type Yard } from '../yard';

function askWords({ about, falls, limit, lamps }: Question): string {
  if (about) return `What ${about.length > 1 ? 'do' : 'does'} ${joinWords(about, 'and')} do?`;
  if (falls) {
    return `${falls.of.length > 1 ? 'Do' : 'Does'} ${joinWords(falls.of, 'and')} fall into the gap?`;
  }
  if (limit) return 'Does the controller limit the current?';
  if (!lamps) return 'What do you see?';
  const many = lamps.length > 1;
  return `How ${many ? 'do lamps' : 'does lamp'} ${joinWords(lamps, 'and')} look?`;
}

/** A question in words: what is done, then what is asked. */
export const askOf = (yard: Yard, question: Question): string =>
  [question.do ? actionWords(question.do, yard) : '', askWords(question)].filter(Boolean).join(' ');
