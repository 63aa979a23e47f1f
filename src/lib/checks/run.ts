import type { Yard } from '../yard';
import { checks } from './checks';
import { defaultOptions, type CheckOptions, type Finding } from './finding';
import type { FaultTable } from './fault-row';
import { faultTable } from './one-thing-fails';

/** What a run of all checks tells as it goes. */
export type Told =
  | { readonly about: 'doing'; readonly title: string; readonly done: number; readonly of: number }
  | {
      readonly about: 'check';
      readonly id: string;
      readonly title: string;
      readonly findings: readonly Finding[];
    }
  | { readonly about: 'faults'; readonly done: number; readonly of: number }
  | { readonly about: 'table'; readonly table: FaultTable };

/** Runs every check of a yard, then every single fault, step by step: a caller can show each and can stop. */
export function* runChecks(
  yard: Yard,
  options: CheckOptions = defaultOptions
): Generator<Told, void> {
  for (const [done, { id, title, run }] of checks.entries()) {
    yield { about: 'doing', title, done, of: checks.length };
    yield { about: 'check', id, title, findings: run(yard, options) };
  }
  const steps = faultTable(yard);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) {
      yield { about: 'table', table: step.value };
      return;
    }
    yield { about: 'faults', ...step.value };
  }
}
