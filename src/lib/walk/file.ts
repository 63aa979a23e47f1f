import {
  formats,
  fragmentOf,
  leastScene,
  leastYard,
  opener,
  readAs,
  UnreadableError,
  type Form
} from '../share';
import { MAX_WALK_TEXT, MAX_WALK_VALUES } from './limits';
import { admitWalk, walkFile, type Walkthrough } from './walkthrough';

const walkForm: Form<Walkthrough> = {
  of: formats.walkthrough,
  version: 1,
  maxText: MAX_WALK_TEXT,
  maxValues: MAX_WALK_VALUES,
  admit: admitWalk
};

/** The walkthrough with only what differs from the schemas' defaults. */
function least(walk: Walkthrough): unknown {
  const { steps, ...file } = walkFile(walk);
  return {
    ...file,
    yard: leastYard(walk.yard),
    steps: steps.map((step) => ({ ...step, scene: leastScene(step.scene) }))
  };
}

/** The text of a `.walk.json` file, to be read by people too. */
export const walkText = (walk: Walkthrough): string => `${JSON.stringify(least(walk), null, 2)}\n`;

/** The same, without a blank: for links and the store. */
export const compactWalk = (walk: Walkthrough): string => JSON.stringify(least(walk));

/** The fragment of a link to the walkthrough, with its `#`; undefined where it would be too long. */
export const walkFragment = (walk: Walkthrough): string | undefined =>
  fragmentOf(formats.walkthrough, compactWalk(walk));

/**
 * Reads a walkthrough's text.
 * @throws UnreadableError with words for the reader.
 */
export const readWalk = (text: string): Walkthrough => readAs(walkForm, text);

/** Where the walkthrough stands in a page of its own. */
const BEFORE = '<script type="application/json" id="walkthrough">';
const AFTER = '</script>';

/** The text between the two marks; undefined where there are none. */
function heldIn(page: string): string | undefined {
  const from = page.indexOf(BEFORE);
  const to = page.indexOf(AFTER, from);
  return from < 0 || to < 0 ? undefined : page.slice(from + BEFORE.length, to);
}

/**
 * A page of its own with the walkthrough inside, as data that nothing runs.
 * @throws RangeError when the page has no place for it.
 */
export function filledPage(page: string, walk: Walkthrough): string {
  const [head, ...rest] = page.split(BEFORE);
  const [tail, ...more] = rest;
  if (tail === undefined || more.length > 0)
    throw new RangeError('The page has no single place for a walkthrough.');
  const data = compactWalk(walk).replaceAll('<', '\\u003c');
  return `${head}${BEFORE}${data}${tail.slice(tail.indexOf(AFTER))}`;
}

function readPage(page: string): Walkthrough {
  const held = heldIn(page);
  if (held !== undefined) return readWalk(held);
  throw new UnreadableError(
    'foreign',
    'This page has no walkthrough inside. Open one that was saved here as one HTML file.'
  );
}

/** Opens a walkthrough: a link, a `.walk.json` file, or a page of its own that was saved here. */
export const { open: openWalk, openFile: openWalkFile } = opener<Walkthrough>({
  form: walkForm,
  kinds: [[(text) => /^\s*<(!doctype html|html)\b/i.test(text), readPage]],
  allowed:
    'A link, a .walk.json file, or one HTML file saved here can be opened. Yards, and pictures of them, are opened on the page ‘My yard’.'
});
