import {
  faultName,
  faultsOf,
  faultWords,
  once,
  repairWords,
  sentence,
  type Fault,
  type Yard
} from '../yard';

/** One thing that may be wrong with a yard, or that nothing is. */
export interface Suspect {
  readonly name: string;
  /** Undefined: nothing is wrong. */
  readonly fault: Fault | undefined;
  /** "The feed dropper A is off." */
  readonly words: string;
  /** What puts it right; empty where nothing is wrong. */
  readonly repair: string;
  /** How likely it is before any test, as a share of all. */
  readonly prior: number;
}

/**
 * How often a kind of fault is met, against each other and one place of it at a time: dry joints
 * and wires off lead, contacts that weld are rare. Source: common practice.
 */
const often: Readonly<Record<string, number>> = {
  highOhms: 6,
  wireOff: 6,
  linkBroken: 6,
  stuckOpen: 4,
  halfHome: 2,
  early: 2,
  bridge: 2,
  touching: 2,
  shorted: 2,
  joined: 2,
  comNc: 1,
  lampReversed: 1,
  lampBare: 1,
  droppersCrossed: 1,
  welded: 1,
  linkedPast: 1,
  crossed: 0.5
};

/** How often nothing is wrong after all, against one place of a fault. Source: common practice. */
const SOUND = 3;

/** How often a fault is met, against others. */
export const weightOf = (fault: Fault): number => often[faultName(fault).split(':')[0] ?? ''] ?? 1;

/** Every single fault that the yard can have, each with its prior weight, and "nothing is wrong". */
export const suspectsOf = once((yard: Yard): readonly Suspect[] => {
  const faults = faultsOf(yard);
  const all = faults.reduce((sum, fault) => sum + weightOf(fault), SOUND);
  return [
    {
      name: 'sound',
      fault: undefined,
      words: 'Nothing is wrong.',
      repair: '',
      prior: SOUND / all
    },
    ...faults.map((fault) => ({
      name: faultName(fault),
      fault,
      words: sentence(faultWords(fault)),
      repair: sentence(repairWords(fault)),
      prior: weightOf(fault) / all
    }))
  ];
});
