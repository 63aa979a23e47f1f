import { outcomes } from './board';
import { suspects, type Hunt } from './hunt';
import type { Test } from './kinds';
import type { Meaning } from './next';

/** Below this share a suspect is not named among those that an outcome leaves. Source: common practice. */
const NAMED = 0.001;

/**
 * What each outcome of any test would mean, as the advice tells it of the best one; an outcome that
 * no suspect would show leaves none.
 */
export function meanings(hunt: Hunt, test: Test): readonly Meaning[] {
  const ranked = suspects(hunt).filter(({ chance }) => chance >= NAMED);
  const [rows = []] = outcomes(
    hunt.yard,
    [test],
    ranked.map(({ suspect }) => suspect)
  );
  return test.outcomes.map((outcome, index) => {
    const shown = ranked.flatMap(({ suspect, chance }, number) => {
      const share = rows[number]?.[index] ?? 0;
      return share > 0 ? [{ suspect, weight: chance * share }] : [];
    });
    return {
      outcome,
      chance: shown.reduce((sum, { weight }) => sum + weight, 0),
      stay: shown.map(({ suspect }) => suspect)
    };
  });
}
