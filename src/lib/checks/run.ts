import type { Yard } from '../yard';
import { checks } from './checks';
import { defaultOptions, type CheckOptions, type Finding } from './finding';
import type { FaultTable } from './fault-row';
import type { Progress } from './gap/faults';
import { faultTable } from './one-thing-fails';
import { pairTable, tooManyPairs } from './two-things-fail';

/** What a run of all checks tells as it goes. */
export type Told =
  | { readonly about: 'doing'; readonly title: string; readonly done: number; readonly of: number }
  | {
      readonly about: 'check';
      readonly id: string;
      readonly title: string;
      readonly findings: readonly Finding[];
    }
  | { readonly about: 'faults' | 'pairs'; readonly done: number; readonly of: number }
  | { readonly about: 'table' | 'pair table'; readonly table: FaultTable }
  /** Two faults at once are not tried, and why. */
  | { readonly about: 'no pairs'; readonly words: string };

/** Tells how far some steps are, and returns what they lead to. */
function* tell<T>(about: 'faults' | 'pairs', steps: Generator<Progress, T>): Generator<Told, T> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    yield { about, ...step.value };
  }
}

/**
 * Runs every check of a yard, then every single fault, then every two where the yard is small, step by
 * step: a caller can show each and can stop.
 */
export function* runChecks(
  yard: Yard,
  options: CheckOptions = defaultOptions
): Generator<Told, void> {
  for (const [done, { id, title, run }] of checks.entries()) {
    yield { about: 'doing', title, done, of: checks.length };
    yield { about: 'check', id, title, findings: run(yard, options) };
  }
  yield { about: 'table', table: yield* tell('faults', faultTable(yard)) };
  const words = tooManyPairs(yard);
  if (words) yield { about: 'no pairs', words };
  else yield { about: 'pair table', table: yield* tell('pairs', pairTable(yard)) };
}
