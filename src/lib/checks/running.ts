import { railOhmsPerMetre, type Scale } from '../tables';
import {
  ampsText,
  feedOf,
  joinWords,
  placed,
  read,
  roadNamed,
  roads,
  roadTitle,
  type Loco,
  type Reading,
  type Yard
} from '../yard';
import type { Check, Figures, Finding } from './finding';
import { listed } from './listed';
import { hungriest, lightSpeedAt, roadScene, sourceVolts } from './road-scene';
import { thickerWires } from './thicker';
import { wireKind, wireWords } from './wire-kinds';

/** What a part takes on the way to a road's rails and home. */
interface Cost {
  readonly id: string;
  /** What it is, as people name it. */
  readonly kind: string;
  readonly volts: number;
}

/** What a road's rails get, V, and what is lost on the way. */
export interface RoadVolts {
  readonly road: string;
  /** Volts of its controller at full knob. */
  readonly source: number;
  /** Volts at the rails, its loco held still and running light. */
  readonly stalled: number;
  readonly running: number;
  /** Volts at the far end of its rails, running light, the droppers at the other end. */
  readonly farEnd: number;
  /** Amps of the loco held still. */
  readonly stallAmps: number;
  /** Volts that wires and contacts take while the loco runs light. */
  readonly lost: number;
  /** Volts that each part takes then, most first. */
  readonly costs: readonly Cost[];
}

const railVolts = ({ between }: Reading, road: string): number =>
  Math.abs(between(`feed rail ${road}`, `return rail ${road}`) ?? 0);

/** Code of the rail that is usual in a scale. Source: common practice. */
const railCodes: Readonly<Record<Scale, number>> = { N: 55, 'OO/HO': 75, O: 124 };

/** Ohms of both nickel-silver rails of a road from end to end. */
const railsOhms = (yard: Yard, road: string): number =>
  (2 * railOhmsPerMetre(railCodes[yard.scale]) * roadNamed(yard, road).lengthMm) / 1000;

/** Reads a road with one loco held still, then running light on the volts it gets. */
export function roadVolts(yard: Yard, road: string, loco: Loco): RoadVolts {
  const on = { yard, roads: [road], locos: [loco.name] };
  const held = read(yard, roadScene(on));
  const stalled = railVolts(held, road);
  const stallAmps = Math.abs(held.amps(loco.name));
  const source = sourceVolts(yard, road);
  const pathOhms = stallAmps === 0 ? 0 : (source - stalled) / stallAmps;
  const guess = source - loco.lightAmps * pathOhms;
  const light = read(yard, roadScene({ ...on, speed: lightSpeedAt(loco, guess) }));
  const running = railVolts(light, road);
  const costs = light.runs
    .filter(({ job }) => job !== 'lamp')
    .flatMap(placed)
    .map((part) => {
      const kind = wireKind(yard, part);
      const volts = Math.abs(light.amps(part.id)) * part.ohms;
      return { id: part.id, kind: kind ? wireWords[kind] : 'contacts', volts };
    })
    .filter(({ volts }) => volts > 0)
    .sort((a, b) => b.volts - a.volts);
  return {
    road,
    source,
    stalled,
    running,
    farEnd: Math.max(0, running - loco.lightAmps * railsOhms(yard, road)),
    stallAmps,
    lost: Math.abs(light.between(feedOf(yard, road), 'return') ?? 0) - running,
    costs
  };
}

const isWithin = ({ lost, source }: RoadVolts, share: number): boolean => lost <= share * source;

/** The change of wire with least copper that brings every road within its share, the worst tried first; undefined when none does. */
function cheapest(yard: Yard, ordered: readonly RoadVolts[], share: number): string | undefined {
  const loco = hungriest(yard);
  return thickerWires(yard).find((change) =>
    ordered.every(({ road }) => isWithin(roadVolts(change.yard, road, loco), share))
  )?.words;
}

const percent = (share: number): string => `${Number((share * 100).toFixed(1))} %`;

/** What each kind of wire and the contacts take, most first. */
function costWords({ costs }: RoadVolts): string {
  const kinds = [...new Set(costs.map(({ kind }) => kind))];
  const parts = kinds
    .map((kind) => ({
      kind,
      volts: costs.reduce((sum, cost) => sum + (cost.kind === kind ? cost.volts : 0), 0)
    }))
    .sort((a, b) => b.volts - a.volts)
    .map(({ kind, volts }) => `${kind} ${volts.toFixed(2)} V`);
  return joinWords(parts, 'and');
}

const figuresOf = (yard: Yard, all: readonly RoadVolts[]): Figures => ({
  title: `Volts at the rails of every road, knob full on, ${hungriest(yard).name} on it`,
  columns: ['Road', 'Running', 'Stalled', 'Far end, running', 'Lost'],
  rows: all.map(({ road, running, stalled, farEnd, lost }) => [
    roadTitle(yard, road),
    ...[running, stalled, farEnd, lost].map((volts) => `${volts.toFixed(2)} V`)
  ])
});

function worstFinding(yard: Yard, all: readonly RoadVolts[], share: number): Finding {
  const ordered = all.toSorted((a, b) => b.lost / b.source - a.lost / a.source);
  const [worst, best] = [ordered[0], ordered.at(-1)] as [RoadVolts, RoadVolts];
  const fits = isWithin(worst, share);
  const most =
    best.road === worst.road
      ? ''
      : ` Road ${roadTitle(yard, best.road)} is best off: ${best.running.toFixed(2)} V running.`;
  return {
    grade: fits ? 'fine' : 'think',
    what: `Road ${roadTitle(yard, worst.road)} is worst off: ${worst.running.toFixed(2)} V with ${hungriest(yard).name} running, ${worst.stalled.toFixed(2)} V with it held still.${most}`,
    where: [worst.road],
    amount: `wires and contacts take ${worst.lost.toFixed(2)} V of ${worst.source} V, ${percent(worst.lost / worst.source)}; your limit is ${percent(share)}`,
    why: `Where it goes: ${costWords(worst)}. What they take, the loco does not get.`,
    cure: fits
      ? 'Nothing to do.'
      : (cheapest(yard, ordered, share) ??
        'No usual wire is thick enough: make the runs shorter, or lay two wires side by side.'),
    source: 'NEM 604:2013 cl. 2.2; rails of the usual code, droppers at one end, common practice',
    board: { yard, scene: roadScene({ yard, roads: [worst.road], locos: [hungriest(yard).name] }) },
    figures: figuresOf(yard, all)
  };
}

/** Least volts at the rails at full knob, V. Source: NMRA S-9 cl. I.A. */
const RAILHEAD_VOLTS = 12;

function railheadFinding(yard: Yard, all: readonly RoadVolts[]): Finding {
  const loco = hungriest(yard);
  const low = all.filter(({ running }) => running < RAILHEAD_VOLTS);
  const least = all.reduce((a, b) => (b.running < a.running ? b : a));
  const more = Math.ceil(RAILHEAD_VOLTS - least.running);
  const { road, running } = least;
  const speed = lightSpeedAt(loco, running);
  return {
    grade: low.length > 0 ? 'think' : 'fine',
    what:
      low.length > 0
        ? `With the knob full on, ${low.length === all.length ? 'no road gets' : `${listed(low.map((each) => roadTitle(yard, each.road)))} ${low.length > 1 ? 'do' : 'does'} not get`} the 12 V of the standard.`
        : 'Every road gets 12 V with the knob full on.',
    where: low.map((each) => each.road),
    amount: `${running.toFixed(2)} V at the least, ${loco.name} drawing ${ampsText(loco.lightAmps)}`,
    why: `The standard asks for 12 V at the rails at full load.${low.length > 0 ? ' Less harms nothing: locos are a little slower.' : ''}`,
    cure:
      low.length > 0
        ? `Nothing need be done. A supply of ${least.source + more} V would meet it.`
        : 'Nothing to do.',
    source: 'NMRA S-9 cl. I.A',
    board: { yard, scene: roadScene({ yard, roads: [road], locos: [loco.name], speed }) }
  };
}

/** Volts at every road with the hungriest loco, and what the wires cost. */
export const running: Check = {
  id: 'running',
  title: 'Will the far road crawl?',
  run(yard, { dropShare }) {
    const loco = hungriest(yard);
    const all = roads(yard)
      .map((road) => roadVolts(yard, road, loco))
      .filter(({ stallAmps }) => stallAmps > loco.lightAmps);
    return all.length === 0 ? [] : [worstFinding(yard, all, dropShare), railheadFinding(yard, all)];
  }
};
