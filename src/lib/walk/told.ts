import { holeAt, type Scene, type Yard } from '../yard';
import { sceneAfter } from './answered';
import { changesOf, type Change } from './changes';
import { roadsNamed } from './named';
import type { WalkStep } from './walkthrough';

/** "All toggles are off", "every other road". */
const SWEEPING =
  /\b(all|every|each|both|no|other|others)\b[^.]*\b(toggle|switch|push|road)(e?s)?\b/i;

/** Words about deck, pin and plug. */
const wordsOf: Readonly<Record<string, RegExp>> = {
  deck: /\b(deck|fac(e|es|ed|ing)|lines? up)\b/i,
  pin: /\bpin(ned)?\b/i,
  plug: /\b(plug|unplug)(ged)?\b/i
};

/** Whether a text says a word about a change of a switch, deck, pin or plug; of any other change none is needed. */
export function isTold(yard: Yard, { place }: Change, text: string): boolean {
  const form = wordsOf[place];
  if (form) return form.test(text);
  const [, kind, road = ''] = /^(toggle|selector|push) (.+)$/.exec(place) ?? [];
  if (kind === undefined) return true;
  const about = SWEEPING.test(text) || roadsNamed(yard, text).includes(road);
  return about || (kind === 'selector' && /\bselector\b/i.test(text));
}

/** What changed; where the deck goes to a place without a hole, that the pin is out goes without saying. */
function changesFrom(yard: Yard, before: Scene, after: Scene): readonly Change[] {
  const all = changesOf(yard, before, after);
  const isForced = all.some(({ place }) => place === 'deck') && !holeAt(yard, after.deck);
  return isForced ? all.filter(({ place }) => place !== 'pin') : all;
}

/**
 * What changed since the step before, counted from the board which its reader sees last: as it stood
 * there, or as its call left it.
 */
export function changesSince(yard: Yard, before: WalkStep, step: WalkStep): readonly Change[] {
  const after = sceneAfter(yard, before.scene, before.call?.question.do);
  return [before.scene, ...(after ? [after] : [])]
    .map((scene) => changesFrom(yard, scene, step.scene))
    .reduce((least, each) => (each.length < least.length ? each : least));
}
