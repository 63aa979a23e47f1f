/** What can be taken back, and done again. */
interface Undoable {
  undo(): void;
  redo(): void;
}

/** Undo and redo by keyboard, but not inside a field, which has its own. */
export function undoKeys(event: KeyboardEvent, what: Undoable): void {
  const { key, ctrlKey, metaKey, shiftKey, target } = event;
  const inField = target instanceof HTMLElement && target.matches('input[type=text], textarea');
  if (!(ctrlKey || metaKey) || inField) return;
  const back = key.toLowerCase() === 'z' && !shiftKey;
  const on = key.toLowerCase() === 'y' || (key.toLowerCase() === 'z' && shiftKey);
  if (!back && !on) return;
  event.preventDefault();
  if (back) what.undo();
  else what.redo();
}
