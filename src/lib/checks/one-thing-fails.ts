import { joinWords, liveRoads, roadTitle, sentence, type Fault, type Yard } from '../yard';
import { faultCures } from './fault-cures';
import type { Finding, Grade, Sight } from './finding';
import { breachScene, sneakScene } from './gap/board';
import type { Notice } from './gap/everyday';
import { faultSteps, type FaultProof, type FaultProofs, type Progress } from './gap/faults';
import { groundOf, type Breach } from './gap/proof';
import { breachWords, countText } from './gap/words';
import { listed } from './listed';

/** One fault that opens a new end: what it lets happen, whether it shows, which test finds it, what takes it away. */
export interface FaultRow {
  /** What faults like it have in common, to gather them by. */
  readonly kind: string;
  readonly fault: string;
  /** `must fix` where every road still runs as it should, so that it may be long before it is found. */
  readonly grade: Grade;
  /** Whether everyday use shows it at all. */
  readonly shows: boolean;
  readonly lets: string;
  readonly notice: string;
  readonly test: string;
  readonly cure: string;
  readonly board: Sight;
}

export interface FaultTable {
  readonly rows: readonly FaultRow[];
  readonly summary: Finding;
}

/** How faults of one kind are called together, by the key that tells the kind. */
const kindWords: Readonly<Record<string, string>> = {
  stuckOpen: 'A contact never makes',
  welded: 'A contact never opens',
  wireOff: 'A wire is off',
  linkBroken: 'A link of the return is broken',
  crossed: 'Two feeds are exchanged',
  bridge: 'Solder bridges two contacts',
  halfHome: 'The plug is half home',
  early: 'A pin contact makes too early',
  comNc: 'COM and NC are exchanged',
  touching: 'Rails of two roads touch',
  droppersCrossed: 'Feed and return are exchanged',
  lampReversed: 'A lamp is the wrong way round',
  lampBare: 'A lamp has no resistor'
};

const kindOf = (fault: Fault): string =>
  Object.keys(fault).flatMap((key) => kindWords[key] ?? [])[0] ?? 'Other faults';

/** Whether somebody who works the yard as usual would notice. */
function noticeWords(yard: Yard, { dead, live }: Notice): string {
  if (dead.length === 0 && live.length === 0) return 'In everyday use nothing shows it.';
  const named = (roads: readonly string[]) =>
    `${roads.length > 1 ? 'roads' : 'road'} ${listed(roads.map((road) => roadTitle(yard, road)))}`;
  const they = (roads: readonly string[]) => (roads.length > 1 ? 'they' : 'it');
  const parts = [
    ...(dead.length > 0 ? [`${named(dead)} will not run when ${they(dead)} should`] : []),
    ...(live.length > 0 ? [`a loco on ${named(live)} runs when it should not`] : [])
  ];
  return sentence(`yes: ${joinWords(parts, 'and')}`);
}

interface Opened extends FaultProof {
  readonly breach: Breach;
  readonly cure: string;
}

/** Whether a fault only opens what was closed: then a current can reach a road through another loco only. */
const onlyOpens = (fault: Fault): boolean =>
  ['stuckOpen', 'wireOff', 'linkBroken', 'halfHome'].some((key) => key in fault);

function faultRow(yard: Yard, { fault, words, notice, breach, cure }: Opened): FaultRow {
  const road = roadTitle(yard, breach.road);
  const plain = breachScene(yard, breach, [fault]);
  const opens = onlyOpens(fault);
  const { scene, by } = opens
    ? sneakScene(yard, plain, breach.road)
    : { scene: plain, by: undefined };
  const weak = opens && !liveRoads(yard, scene).has(breach.road);
  return {
    kind: kindOf(fault),
    fault: sentence(words),
    grade: weak || notice.dead.length > 0 ? 'think' : 'must fix',
    shows: notice.dead.length + notice.live.length > 0,
    lets: `Road ${road} can ${weak ? 'have some volts, too few to start a loco,' : 'be live'} while its ${breach.end} end faces nothing.`,
    notice: noticeWords(yard, notice),
    test: `${sentence(breachWords(yard, breach))}${by === undefined ? '' : ` A loco stands on ${roadTitle(yard, by)}.`} A test lamp across the rails of ${road} must stay dark.`,
    cure,
    board: { yard, scene }
  };
}

const summaryOf = ({ states, unsafe, faults }: FaultProofs): Finding => {
  const harmless = faults.filter(({ breach }) => !breach).length;
  return {
    grade: 'fine',
    what: 'Every state was covered with no fault and with each single fault.',
    where: [],
    amount: `${countText(unsafe)} of ${countText(states)} states are unsafe, pin home or out`,
    why: `${harmless} of ${faults.length} faults that change a path open no new end with the pin home.`,
    cure: 'Nothing to do.',
    source: 'the engine'
  };
};

/**
 * The gap proof under every single fault, step by step; at the end the faults that open an end with
 * the pin home, those first which nothing shows.
 */
export function* faultTable(yard: Yard): Generator<Progress, FaultTable> {
  const ground = groundOf(yard);
  const proofs = yield* faultSteps(ground);
  const cureOf = faultCures(ground);
  const rows = proofs.faults.flatMap(({ breach, ...each }) =>
    breach ? [faultRow(yard, { ...each, breach, cure: cureOf(each.fault, breach) })] : []
  );
  const hidden = ({ grade }: FaultRow) => (grade === 'must fix' ? 0 : 1);
  return { rows: rows.toSorted((a, b) => hidden(a) - hidden(b)), summary: summaryOf(proofs) };
}
