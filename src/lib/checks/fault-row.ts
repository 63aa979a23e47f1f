import { faultWords, joinWords, roadTitle, sentence, type Fault, type Yard } from '../yard';
import type { Finding, Grade, Sight } from './finding';
import { breachScene } from './gap/board';
import type { Notice } from './gap/everyday';
import type { Breach } from './gap/proof';
import { breachWords } from './gap/words';

/** A fault, or two, that opens a new end: what it lets happen, whether it shows, which test finds it, what takes it away. */
export interface FaultRow {
  /** What faults like it have in common, to gather them by. */
  readonly kind: string;
  readonly fault: string;
  /** `must fix` where nothing shows it in everyday use. */
  readonly grade: Grade;
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
  scene: breachScene(yard, breach, faults)
});

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
    joinWords(
      roads.map((road) => roadTitle(yard, road)),
      'and'
    );
  const parts = [
    ...(dead.length > 0 ? [`${named(dead)} will not run when it should`] : []),
    ...(live.length > 0 ? [`${named(live)} runs when it should not`] : [])
  ];
  return sentence(`yes: ${joinWords(parts, 'and')}`);
}

/** Faults that let something happen, and what shows of them. */
interface Told {
  readonly faults: readonly Fault[];
  readonly breach: Breach;
  readonly notice: Notice;
}

export function faultRow(yard: Yard, { faults, breach, notice }: Told): FaultRow {
  const road = roadTitle(yard, breach.road);
  return {
    kind: joinWords(faults.map(kindOf), 'and'),
    fault: sentence(joinWords(faults.map(faultWords), 'and')),
    grade: notice.dead.length > 0 ? 'think' : 'must fix',
    lets: `Road ${road} can be live while its ${breach.end} end faces nothing.`,
    notice: noticeWords(yard, notice),
    test: `${sentence(breachWords(yard, breach))} A test lamp across the rails of ${road} must stay dark.`,
    cure: 'A stop at that end, closed whenever nothing faces it.',
    breach,
    faults
  };
}

/** Rows in the order of telling: those first which nothing shows in everyday use. */
export function inOrder(rows: readonly FaultRow[]): readonly FaultRow[] {
  const hidden = ({ grade }: FaultRow) => (grade === 'must fix' ? 0 : 1);
  return rows.toSorted((a, b) => hidden(a) - hidden(b));
}
