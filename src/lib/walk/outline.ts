import { once, type Yard } from '../yard';
import { groundOf } from './ground';
import { MAX_TITLE } from './limits';
import { allRoads, oneAtATime, oneRoad, thePin, thePlug, type Draft } from './outlineSteps';
import { trouble } from './trouble';
import type { Walkthrough } from './walkthrough';

const drafts: readonly Draft[] = [oneRoad, allRoads, oneAtATime, thePlug, thePin, trouble];

const titleOf = (name: string): string => {
  const title = `How ${name} is wired`;
  return title.length <= MAX_TITLE ? title : name.slice(0, MAX_TITLE);
};

/**
 * A walkthrough made from a yard, which makes sense as it is: one road, all roads, one at a time, the
 * plug, the pin, what can go wrong; of these only what the yard has. Every answer is the engine's.
 */
export const outline = once((yard: Yard): Walkthrough => {
  const ground = groundOf(yard);
  return {
    title: titleOf(yard.name),
    yard,
    steps: drafts.flatMap((draft) => draft(ground) ?? [])
  };
});
