import {
  admitWalk,
  walkFile,
  walkRounds,
  type KeptWorkshop,
  type Plan,
  type Round,
  type Walkthrough
} from '../../walk';
import type { Programme } from './workshop.svelte';

/** A plan with its rounds. */
export interface PlanRounds extends Plan {
  readonly rounds: readonly Round[];
}

/** A round takes so long, minutes. Source: common practice. */
const ROUND_MINUTES = 6;

/** A plan as what a workshop asks. */
export const fromPlan = ({ id, name, minutes, rounds }: PlanRounds): Programme => ({
  source: { plan: id },
  name,
  minutes,
  rounds
});

/** A walkthrough's calls as what a workshop asks; undefined where it has none that a room can vote on. */
export function fromWalk(walk: Walkthrough): Programme | undefined {
  const rounds = walkRounds(walk);
  if (rounds.length === 0) return undefined;
  return {
    source: { walk: walkFile(walk) },
    name: walk.title,
    minutes: rounds.length * ROUND_MINUTES,
    rounds
  };
}

/** What a kept workshop asks; undefined where its plan is no longer offered, or its walkthrough no longer fits. */
export function programmeOf(
  kept: KeptWorkshop,
  plans: readonly PlanRounds[]
): Programme | undefined {
  const plan = plans.find(({ id }) => id === kept.plan);
  if (plan) return fromPlan(plan);
  try {
    return kept.walk === undefined ? undefined : fromWalk(admitWalk(kept.walk));
  } catch {
    return undefined;
  }
}
