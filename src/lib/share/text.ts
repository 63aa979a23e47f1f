import { BorderError, type Finding } from '../yard';
import { isPlain, type Plain } from './canonical';
import { yardForm, type YardFile } from './file';
import { elsewhere, otherThan, type Form, type Format } from './form';
import { MAX_DEPTH, MAX_LIST } from './limits';
import { shownName } from './names';
import { UnreadableError } from './wrong';

/** Findings told in one message. */
const MOST_TOLD = 3;

const told = ({ path, met, allowed }: Finding): string =>
  `${path.map((key) => shownName(String(key))).join(' › ')}: met ${shownName(met)}, allowed: ${shownName(allowed, 200)}.`;

function unfit({ noun }: Format, { findings }: BorderError): UnreadableError {
  const rest = findings.length - MOST_TOLD;
  const lines = findings.slice(0, MOST_TOLD).map(told);
  const more = rest > 0 ? [`And ${rest} more.`] : [];
  return new UnreadableError(
    'does not fit',
    [`This ${noun} does not fit.`, ...lines, ...more].join('\n')
  );
}

/** Walks all values without recursion, and stops at the first bound that is passed. */
function mustBeBounded(value: unknown, { of, maxValues }: Form<unknown>): void {
  const waiting: { readonly value: unknown; readonly depth: number }[] = [{ value, depth: 1 }];
  let count = 0;
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    count++;
    if (typeof next.value !== 'object' || next.value === null) continue;
    const inside = Object.values(next.value);
    const depth = next.depth + 1;
    if (
      depth > MAX_DEPTH ||
      count + waiting.length + inside.length > maxValues ||
      (Array.isArray(next.value) && inside.length > MAX_LIST)
    ) {
      throw new UnreadableError(
        'too much',
        `This holds far more than a ${of.noun} can need. It was not opened.`
      );
    }
    for (const each of inside) waiting.push({ value: each, depth });
  }
}

function parsed(text: string, { noun }: Format): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw /[}\]]\s*$/.test(text)
      ? new UnreadableError(
          'damaged',
          `This ${noun}’s text is damaged: it is not sound JSON. Ask for the file again.`
        )
      : new UnreadableError(
          'cut',
          `This ${noun}’s text breaks off before its end. Ask for the whole file again.`
        );
  }
}

function mustBeOurs(value: unknown, { of, version: newest }: Form<unknown>): Plain {
  const format = isPlain(value) ? value.format : undefined;
  const other = otherThan(of, (each) => each.format === format);
  if (other) throw elsewhere(other);
  if (!isPlain(value) || format !== of.format) {
    throw new UnreadableError(
      'foreign',
      `This is no ${of.noun} of ours: it does not say "format": "${of.format}".`
    );
  }
  const { version } = value;
  if (typeof version === 'number' && Number.isInteger(version) && version > newest) {
    throw new UnreadableError(
      'newer',
      `This ${of.noun} is of version ${version}, newer than this page (${newest}). Reload the page while online, then try again.`
    );
  }
  return value;
}

/**
 * Reads the text of a thing of that form, of any version.
 * @throws UnreadableError with words for the reader.
 */
export function readAs<T>(form: Form<T>, text: string): T {
  const { of } = form;
  if (text.length > form.maxText) {
    throw new UnreadableError(
      'too much',
      `This text is far longer than a ${of.noun} can need. It was not opened.`
    );
  }
  const value = parsed(text, of);
  mustBeBounded(value, form);
  const file = mustBeOurs(value, form);
  try {
    return form.admit(file);
  } catch (error) {
    if (error instanceof BorderError) throw unfit(of, error);
    throw error;
  }
}

/**
 * Reads a yard's text, of any version.
 * @throws UnreadableError with words for the reader.
 */
export const readText = (text: string): YardFile => readAs(yardForm, text);
