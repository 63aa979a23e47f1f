import { progressNow } from './progress.svelte';

let all = $state(false);

/** Whether a step may be shown: every call before it is made, or the reader asked to see everything. */
export const isOpen = (calls: readonly string[]): boolean =>
  all || calls.every((id) => progressNow().calls[id] !== undefined);

/** Shows every step, whatever is called; `false` goes back to step by step. */
export function showAll(yes: boolean): void {
  all = yes;
}
