import { roundsOf } from '$lib/server/lessons';
import { plans } from '$lib/walk';

export const load = () => ({
  plans: plans.map((plan) => ({ ...plan, rounds: roundsOf(plan.calls) }))
});
