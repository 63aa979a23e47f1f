import { admitWorkshop, type KeptWorkshop } from '../../walk';
import { keep, readKept } from '../store';

const KEY = 'ohmyard.workshop';

/** The workshop that this device keeps; undefined where it keeps none that can be read. */
export function keptWorkshop(): KeptWorkshop | undefined {
  try {
    const text = readKept(KEY);
    return text === null ? undefined : admitWorkshop(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** Keeps the workshop on this device; false where it will not. */
export const keepWorkshop = (kept: KeptWorkshop): boolean => keep(KEY, JSON.stringify(kept));

/** Where this tab remembers that a workshop is on its screen. */
const ON_SCREEN = 'ohmyard.workshop.on';

/** Whether this tab showed a workshop when it was left: a reload goes on with it. */
export function wasOnScreen(): boolean {
  try {
    return sessionStorage.getItem(ON_SCREEN) === 'yes';
  } catch {
    return false;
  }
}

/** Notes whether this tab shows a workshop. */
export function noteOnScreen(on: boolean): void {
  try {
    sessionStorage.setItem(ON_SCREEN, on ? 'yes' : 'no');
  } catch {
    // Without it a reload shows the first page, which offers to go on.
  }
}
