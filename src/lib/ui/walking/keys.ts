/** What a key asks of the player. */
export type Turn = 'next' | 'back' | 'again';

const turns: Readonly<Record<string, Turn>> = {
  ArrowRight: 'next',
  PageDown: 'next',
  ArrowLeft: 'back',
  PageUp: 'back',
  Home: 'again',
  r: 'again',
  R: 'again'
};

/** Controls that take arrows, Home or letters themselves. */
const TAKES_KEYS = 'input, textarea, select, [role=slider], [role=radio], [contenteditable]';
/** Frames that scroll sideways take arrows. */
const SCROLLS = '[tabindex="0"]';

/** What a key pressed anywhere on the page asks for; undefined where it belongs to a control, or means nothing. */
export function turnOf(event: KeyboardEvent): Turn | undefined {
  const { key, target, altKey, ctrlKey, metaKey, defaultPrevented } = event;
  if (altKey || ctrlKey || metaKey || defaultPrevented) return undefined;
  const element = target instanceof Element ? target : undefined;
  const isPage = key.startsWith('Page');
  if (element?.closest('textarea, select, input[type=text], input[type=range], [role=slider]'))
    return undefined;
  if (!isPage && element?.closest(`${TAKES_KEYS}, ${SCROLLS}`)) return undefined;
  return turns[key];
}
