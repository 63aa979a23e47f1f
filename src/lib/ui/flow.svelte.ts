import { progressNow } from './progress.svelte';

/** The lesson whose reader asked to see everything. */
let whole = $state<string>();

/** Whether a step may be shown: every call before it is made, or the reader asked to see the whole lesson. */
export const isOpen = (calls: readonly string[]): boolean =>
  calls.every((id) => id.startsWith(`${whole ?? ''}/`) || progressNow().calls[id] !== undefined);

/** Shows every step of a lesson, whatever is called. */
export function showWhole(slug: string): void {
  whole = slug;
}
