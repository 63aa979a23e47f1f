import type { Check } from './finding';
import { gapProof } from './gap-proof';
import { oneThingFails } from './one-thing-fails';

/** Every check; a new one is one file and one name here. */
export const checks: readonly Check[] = [gapProof, oneThingFails];

export { defaultOptions, type Check, type CheckOptions, type Finding, type Grade } from './finding';
export { groundOf, proveGap, statesOf, type Breach, type GapProof, type States } from './gap/proof';
export { breachScene } from './gap/board';
export { proveFaults, type FaultProof, type FaultProofs } from './gap/faults';
export { assumptions } from './gap/words';
