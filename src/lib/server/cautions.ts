import type { Caution } from '$lib/ui';
import text from '../../../content/safety.md?raw';

/** The cautions that belong to a proof, by their number on the page of all of them. */
const ofProofs = [1, 2, 3, 4, 8];

/** The cautions that stand beside every proof, in the words of content/safety.md. */
export const cautions: readonly Caution[] = ofProofs.flatMap((number) => {
  const [, first, rest] = new RegExp(`^${number}\\. \\*\\*(.+?)\\*\\* (.+)$`, 'm').exec(text) ?? [];
  return first && rest ? [{ number, first, rest }] : [];
});
