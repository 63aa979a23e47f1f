import { BorderError, type Finding } from '../yard';
import { broughtUp, VERSION } from './versions';
import { isPlain, type Plain } from './canonical';
import { admitFile, FORMAT, type YardFile } from './file';
import { MAX_DEPTH, MAX_LIST, MAX_TEXT, MAX_VALUES } from './limits';
import { shownName } from './names';
import { UnreadableError } from './wrong';

/** Findings told in one message. */
const MOST_TOLD = 3;

const told = ({ path, met, allowed }: Finding): string =>
  `${path.map((key) => shownName(String(key))).join(' › ')}: met ${shownName(met)}, allowed: ${shownName(allowed, 200)}.`;

function unfit({ findings }: BorderError): UnreadableError {
  const rest = findings.length - MOST_TOLD;
  const lines = findings.slice(0, MOST_TOLD).map(told);
  const more = rest > 0 ? [`And ${rest} more.`] : [];
  return new UnreadableError(
    'does not fit',
    ['This yard does not fit.', ...lines, ...more].join('\n')
  );
}

/** Walks all values without recursion, and stops at the first bound that is passed. */
function mustBeBounded(value: unknown): void {
  const waiting: { readonly value: unknown; readonly depth: number }[] = [{ value, depth: 1 }];
  let count = 0;
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    count++;
    if (typeof next.value !== 'object' || next.value === null) continue;
    const inside = Object.values(next.value);
    const depth = next.depth + 1;
    if (
      depth > MAX_DEPTH ||
      count + waiting.length + inside.length > MAX_VALUES ||
      (Array.isArray(next.value) && inside.length > MAX_LIST)
    ) {
      throw new UnreadableError(
        'too much',
        'This holds far more than a yard can need. It was not opened.'
      );
    }
    for (const each of inside) waiting.push({ value: each, depth });
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw /[}\]]\s*$/.test(text)
      ? new UnreadableError(
          'damaged',
          'This yard’s text is damaged: it is not sound JSON. Ask for the file again.'
        )
      : new UnreadableError(
          'cut',
          'This yard’s text breaks off before its end. Ask for the whole file again.'
        );
  }
}

function mustBeOurs(value: unknown): Plain {
  if (!isPlain(value) || value.format !== FORMAT) {
    throw new UnreadableError(
      'foreign',
      `This is no yard of ours: it does not say "format": "${FORMAT}".`
    );
  }
  const { version } = value;
  if (typeof version === 'number' && Number.isInteger(version) && version > VERSION) {
    throw new UnreadableError(
      'newer',
      `This yard is of version ${version}, newer than this page (${VERSION}). Reload the page while online, then try again.`
    );
  }
  return value;
}

/**
 * Reads a yard's text, of any version.
 * @throws UnreadableError with words for the reader.
 */
export function readText(text: string): YardFile {
  if (text.length > MAX_TEXT) {
    throw new UnreadableError(
      'too much',
      'This text is far longer than a yard can need. It was not opened.'
    );
  }
  const value = parsed(text);
  mustBeBounded(value);
  const file = mustBeOurs(value);
  try {
    return admitFile(broughtUp(file));
  } catch (error) {
    if (error instanceof BorderError) throw unfit(error);
    throw error;
  }
}
