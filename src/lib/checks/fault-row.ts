import {
  faultWords,
  joinWords,
  liveRoads,
  onlyOpens,
  roadTitle,
  sentence,
  type Fault,
  type Yard
} from '../yard';
import type { Finding, Grade, Sight } from './finding';
import { breachScene, sneakScene, type Sneak } from './gap/board';
import type { Notice } from './gap/everyday';
import type { Breach } from './gap/proof';
import { breachWords } from './gap/words';
import { listed } from './listed';

/** A fault, or two, that opens a new end: what it lets happen, whether it shows, which test finds it, what takes it away. */
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
  readonly breach: Breach;
  readonly faults: readonly Fault[];
}

/** The board on which somebody sees what a fault lets happen. */
export const faultBoard = (yard: Yard, { breach, faults }: FaultRow): Sight => ({
  yard,
  scene: sneakOf(yard, breach, faults).scene
});

/** The scene of a breach, with a loco elsewhere where the current needs one to come through: where all faults only open. */
function sneakOf(yard: Yard, breach: Breach, faults: readonly Fault[]): Sneak {
  const scene = breachScene(yard, breach, faults);
  return faults.every(onlyOpens) ? sneakScene(yard, scene, breach.road) : { scene, by: undefined };
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
  linkedPast: 'The feed is linked past the switches',
  joined: 'A gap has a metal joiner',
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
  const they = dead.length > 1 ? 'they' : 'it';
  const parts = [
    ...(dead.length > 0 ? [`${named(dead)} will not run when ${they} should`] : []),
    ...(live.length > 1 ? [`locos on ${named(live)} run when they should not`] : []),
    ...(live.length === 1 ? [`a loco on ${named(live)} runs when it should not`] : [])
  ];
  return sentence(`yes: ${joinWords(parts, 'and')}`);
}

/** Faults that let something happen, what shows of them, and what takes it away. */
interface Told {
  readonly faults: readonly Fault[];
  readonly breach: Breach;
  readonly notice: Notice;
  readonly cure: string;
}

/** What a current through another loco only brings about: who lets it through, and whether it starts no loco. */
function sneakWords(yard: Yard, { faults, breach }: Told) {
  if (!faults.every(onlyOpens)) return { weak: false, test: '' };
  const { scene, by } = sneakOf(yard, breach, faults);
  return {
    weak: !liveRoads(yard, scene).has(breach.road),
    test: by === undefined ? '' : ` A loco stands on ${roadTitle(yard, by)}.`
  };
}

export function faultRow(yard: Yard, told: Told): FaultRow {
  const { faults, breach, notice, cure } = told;
  const road = roadTitle(yard, breach.road);
  const { weak, test } = sneakWords(yard, told);
  return {
    kind: joinWords(faults.map(kindOf), 'and'),
    fault: sentence(joinWords(faults.map(faultWords), 'and')),
    grade: weak || notice.dead.length > 0 ? 'think' : 'must fix',
    shows: notice.dead.length + notice.live.length > 0,
    lets: `Road ${road} can ${weak ? 'have some volts, too few to start a loco,' : 'be live'} while its ${breach.end} end faces nothing.`,
    notice: noticeWords(yard, notice),
    test: `${sentence(breachWords(yard, breach))}${test} A test lamp across the rails of ${road} must stay dark.`,
    cure,
    breach,
    faults
  };
}

/** Rows in the order of telling: those first which keep every road running. */
export function inOrder(rows: readonly FaultRow[]): readonly FaultRow[] {
  const hidden = ({ grade }: FaultRow) => (grade === 'must fix' ? 0 : 1);
  return rows.toSorted((a, b) => hidden(a) - hidden(b));
}
