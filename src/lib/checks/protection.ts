import { fuseFor, leds, spoiltAfter, strandedSizes, wireAmps, wireAreaMm2 } from '../tables';
import { ampsText, fleetOf, lampRoads, roads, switchedRoads, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { hungriest, shortScene } from './road-scene';
import { wireWords, type WireKind } from './wire-kinds';

/** A run of wire: what can flow in it in a short, A, what flows in use, A, and how many controllers feed it. */
interface Exposed {
  readonly kind: WireKind;
  readonly shortAmps: number;
  readonly loadAmps: number;
  readonly feeds: number;
}

/** Limits of the controllers of a yard, A. */
const limitsOf = ({ supply, second }: Yard): readonly number[] => [
  supply.limitAmps,
  ...(second ? [second.shares === 'supply' ? supply.limitAmps : second.supply.limitAmps] : [])
];

/** What a panel lamp takes, A. */
const LAMP_AMPS = leds.red.testAmps;

const sum = (all: readonly number[]): number => all.reduce((total, each) => total + each, 0);

/** Amps of all locos that can be held still at once: one a road. */
const busyAmps = (yard: Yard): number =>
  sum(
    fleetOf(yard)
      .slice(0, Math.max(1, switchedRoads(yard).length))
      .map(({ ohms }) => yard.supply.volts / ohms)
  );

/**
 * The runs of a yard. The way home and the links carry what both controllers give; a dropper serves one
 * road. Wires of lamps on their own supply are left out: it is a small one that limits itself.
 */
function exposed(yard: Yard): readonly Exposed[] {
  const limits = limitsOf(yard);
  const all = sum(limits);
  const one = Math.max(...limits);
  const shared = { shortAmps: all, loadAmps: Math.min(all, busyAmps(yard)), feeds: limits.length };
  const alone = Math.min(one, yard.supply.volts / hungriest(yard).ohms);
  return [
    { kind: 'main', ...shared },
    { kind: 'link', ...shared },
    { kind: 'dropper', shortAmps: one, loadAmps: alone, feeds: 1 },
    ...(yard.lamps === 'track' && lampRoads(yard).length > 0
      ? [{ kind: 'lamp' as const, shortAmps: one, loadAmps: LAMP_AMPS, feeds: 1 }]
      : [])
  ];
}

/** What guards a wire that the limit does not: the resistor before it, a fuse or a protector, or more copper. */
function cureFor({ kind, shortAmps, loadAmps, feeds }: Exposed, may: number): string {
  if (kind === 'lamp') {
    return 'Solder each lamp resistor to the switch, ahead of the thin wire: no short behind it can pass more than the lamp takes.';
  }
  const thick = strandedSizes.find((size) => wireAmps(size) >= shortAmps);
  const thicker = thick
    ? `use ${thick} wire, which carries ${ampsText(wireAmps(thick))}`
    : 'use several wires side by side';
  const fuse = fuseFor(loadAmps / feeds, may / feeds);
  const each = feeds > 1 ? 'of each controller, near it' : 'near the controller';
  return fuse === undefined
    ? `No fuse carries the locos and still guards this wire: ${thicker}, or set a lower limit.`
    : `Put a slow fuse of ${fuse} A in the feed ${each}. A resettable protector that trips by ${ampsText(may / feeds)} does it too; it holds about half of that. Or ${thicker}.`;
}

const SOURCE =
  'IEC 60364-4-43, IB ≤ In ≤ Iz and t = k²S²/I², from memory; protectors by common practice';
const mayCarry = (yard: Yard, { kind }: Exposed): number => wireAmps(yard.wires[kind].size);

/** How long a short may last, by what the copper can take. */
function spoiltWords(yard: Yard, { kind, shortAmps }: Exposed): string {
  const seconds = spoiltAfter(wireAreaMm2(yard.wires[kind].size), shortAmps);
  const time = seconds < 120 ? `${Math.ceil(seconds)} s` : `${Math.ceil(seconds / 60)} minutes`;
  return `its insulation is spoilt after ${time} at the soonest`;
}

function openFinding(yard: Yard, run: Exposed): Finding {
  const { kind, shortAmps } = run;
  const may = mayCarry(yard, run);
  const [road] = (kind === 'lamp' ? switchedRoads(yard) : roads(yard)) as [string, ...string[]];
  return {
    grade: 'must fix',
    what: `Nothing protects the ${wireWords[kind]}: the controller gives more than they may carry.`,
    where: [wireWords[kind]],
    amount: `${yard.wires[kind].size} may carry ${ampsText(may)}; up to ${ampsText(shortAmps)} can flow in a short`,
    why: `A short in thin wire gets hot, and so does all that lies beside it: ${spoiltWords(yard, run)}.`,
    cure: cureFor(run, may),
    source: SOURCE,
    board: { yard, scene: shortScene(yard, road) }
  };
}

/** The wires that the limit protects, in one finding. */
function safeFinding(yard: Yard, runs: readonly Exposed[]): Finding {
  const names = runs.map(({ kind }) => wireWords[kind]);
  const tight = runs.reduce((a, b) =>
    mayCarry(yard, b) / b.shortAmps < mayCarry(yard, a) / a.shortAmps ? b : a
  );
  return {
    grade: 'fine',
    what: `The controller's limit protects every wire of these: ${names.join(', ')}.`,
    where: names,
    amount: `the tightest is ${yard.wires[tight.kind].size}: it may carry ${ampsText(mayCarry(yard, tight))}, and at most ${ampsText(tight.shortAmps)} can flow in a short`,
    why: 'A short in thin wire gets hot; here the controller gives in first.',
    cure: 'Nothing to do, as long as the controller is not changed for a stronger one.',
    source: SOURCE,
    board: { yard, scene: shortScene(yard, roads(yard)[0] as string) }
  };
}

/** Whether the controller's limit protects each wire behind it, and which fuse would. */
export const protection: Check = {
  id: 'protection',
  title: 'Is every wire protected in a short?',
  run(yard) {
    const runs = exposed(yard);
    const isSafe = (run: Exposed) => run.shortAmps <= mayCarry(yard, run);
    const safe = runs.filter(isSafe);
    return [
      ...runs.filter((run) => !isSafe(run)).map((run) => openFinding(yard, run)),
      ...(safe.length > 0 ? [safeFinding(yard, safe)] : [])
    ];
  }
};
