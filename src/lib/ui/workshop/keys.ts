import { voteOf, type Act, type Stage } from '../../walk';

/** What changes the screen, and not the workshop. */
export type ScreenAct =
  'undo' | 'black' | 'help' | 'sight' | 'phones' | 'clock' | 'full' | 'leave' | 'close';

/** A switch of the yard thrown by hand, once all is told: its place among the roads, from 0. */
export interface Flip {
  readonly kind: 'flip';
  readonly road: number;
}

const screen: ReadonlyMap<string, ScreenAct> = new Map([
  ['u', 'undo'],
  ['.', 'black'],
  [',', 'black'],
  ['b', 'black'],
  ['?', 'help'],
  ['s', 'sight'],
  ['p', 'phones'],
  ['k', 'clock'],
  ['f', 'full'],
  ['q', 'leave'],
  ['escape', 'close']
]);

const acts: ReadonlyMap<string, 'next' | 'back' | 'throw' | 'hint' | 'reset' | 'end'> = new Map([
  ['pagedown', 'next'],
  ['arrowright', 'next'],
  [' ', 'next'],
  ['pageup', 'back'],
  ['arrowleft', 'back'],
  ['t', 'throw'],
  ['h', 'hint'],
  ['r', 'reset'],
  ['end', 'end']
]);

/** A key in a vote: a letter adds one vote, with Shift it takes one away; digits after it give the number. */
function voting(key: string, shift: boolean): Act | undefined {
  const option = 'abcd'.indexOf(key);
  if (option >= 0) return { kind: 'vote', option, by: shift ? -1 : 1 };
  if (/^\d$/.test(key)) return { kind: 'digit', digit: Number(key) };
  if (key === '+' || key === '=') return { kind: 'more' };
  return key === '-' || key === '−' ? { kind: 'less' } : undefined;
}

/**
 * What a key means at a stage. A presenter's clicker sends Page Down and Page Up, and a full stop or B
 * for the black-out; in a vote B counts.
 */
export function actFor(
  { key, shiftKey }: { readonly key: string; readonly shiftKey: boolean },
  stage: Stage
): Act | Flip | ScreenAct | undefined {
  const name = key.toLowerCase();
  const vote = voteOf(stage) === undefined ? undefined : voting(name, shiftKey);
  if (vote) return vote;
  const kind = acts.get(name);
  if (kind) return { kind };
  if (/^[1-9]$/.test(name)) return { kind: 'flip', road: Number(name) - 1 };
  return screen.get(name);
}
