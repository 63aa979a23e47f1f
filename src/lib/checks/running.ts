import { strandedSizes, wireAreaMm2 } from '../tables';
import {
  admit,
  ampsText,
  liveRoads,
  placed,
  read,
  roads,
  roadTitle,
  voltsText,
  YardSchema,
  type Loco,
  type Reading,
  type Yard
} from '../yard';
import type { Check, Finding } from './finding';
import { hungriest, lightSpeedAt, roadScene } from './road-scene';

/** What a road's rails get, V, and what is lost on the way. */
export interface RoadVolts {
  readonly road: string;
  /** Volts at the rails, its loco held still and running light. */
  readonly stalled: number;
  readonly running: number;
  /** Amps of the loco held still. */
  readonly stallAmps: number;
  /** Volts that wires and contacts take while the loco runs light. */
  readonly lost: number;
  /** Volts that each part takes then, most first. */
  readonly costs: readonly { readonly id: string; readonly volts: number }[];
}

const railVolts = ({ between }: Reading, road: string): number =>
  Math.abs(between(`feed rail ${road}`, `return rail ${road}`) ?? 0);

/** Reads a road with one loco held still, then running light on the volts it gets. */
export function roadVolts(yard: Yard, road: string, loco: Loco): RoadVolts {
  const on = { yard, roads: [road], locos: [loco.name] };
  const held = read(yard, roadScene(on));
  const stalled = railVolts(held, road);
  const stallAmps = Math.abs(held.amps(loco.name));
  const pathOhms = stallAmps === 0 ? 0 : (yard.supply.volts - stalled) / stallAmps;
  const guess = yard.supply.volts - loco.lightAmps * pathOhms;
  const light = read(yard, roadScene({ ...on, speed: lightSpeedAt(loco, guess) }));
  const running = railVolts(light, road);
  const costs = light.runs
    .flatMap(placed)
    .map(({ id, ohms }) => ({ id, volts: Math.abs(light.amps(id)) * ohms }))
    .filter(({ volts }) => volts > 0)
    .sort((a, b) => b.volts - a.volts);
  return {
    road,
    stalled,
    running,
    stallAmps,
    lost: Math.abs(light.between('feed', 'return') ?? 0) - running,
    costs
  };
}

/** The next sizes of equipment wire above one. */
const thicker = (size: string): readonly string[] =>
  strandedSizes.filter((each) => wireAreaMm2(each) > wireAreaMm2(size));

const runNames = ['main', 'link', 'dropper'] as const;

interface Change {
  readonly words: string;
  readonly copper: number;
  readonly yard: Yard;
}

/** Every single change of one kind of run to a thicker wire, with the copper it adds, mm²·m. */
const changes = (yard: Yard): readonly Change[] =>
  runNames.flatMap((name) => {
    const { size, lengthM } = yard.wires[name];
    return thicker(size).map((next) => ({
      words: `Use ${next} wire instead of ${size} for each ${name}.`,
      copper: (wireAreaMm2(next) - wireAreaMm2(size)) * lengthM,
      yard: admit('yard', YardSchema, {
        ...yard,
        wires: { ...yard.wires, [name]: { size: next, lengthM } }
      })
    }));
  });

/** The change that adds least copper and brings the road within its share. */
function cheapest(yard: Yard, road: string, within: (volts: RoadVolts) => boolean): string {
  const [best] = changes(yard)
    .filter((change) => within(roadVolts(change.yard, road, hungriest(yard))))
    .sort((a, b) => a.copper - b.copper);
  return best?.words ?? 'No single thicker wire is enough: shorten the runs, or use several.';
}

function worstFinding(yard: Yard, worst: RoadVolts, share: number): Finding {
  const within = ({ lost }: RoadVolts) => lost <= share * yard.supply.volts;
  const fits = within(worst);
  const [most] = worst.costs;
  return {
    grade: fits ? 'fine' : 'think',
    what: `Road ${roadTitle(yard, worst.road)} gets least: ${voltsText(worst.running)} running, ${voltsText(worst.stalled)} stalled.`,
    where: [worst.road],
    amount: `wires and contacts take ${worst.lost.toFixed(2)} V of ${yard.supply.volts} V (limit ${share * 100} %)`,
    why: `Most of it goes in the ${most?.id ?? 'wires'}: ${(most?.volts ?? 0).toFixed(2)} V.`,
    cure: fits ? 'Nothing to do.' : cheapest(yard, worst.road, within),
    source: 'NEM 604:2013 cl. 2.2',
    board: { yard, scene: roadScene({ yard, roads: [worst.road], locos: [hungriest(yard).name] }) }
  };
}

/** Least volts at the rails at full knob, V. Source: NMRA S-9 cl. I.A. */
const RAILHEAD_VOLTS = 12;

function railheadFinding(yard: Yard, all: readonly RoadVolts[]): Finding {
  const low = all.filter(({ running }) => running < RAILHEAD_VOLTS);
  const least = Math.min(...all.map(({ running }) => running));
  return {
    grade: low.length > 0 ? 'think' : 'fine',
    what:
      low.length > 0
        ? `${low.length} of ${all.length} roads get less than 12 V at full knob.`
        : 'Every road gets 12 V at full knob.',
    where: low.map(({ road }) => road),
    amount: `${least.toFixed(2)} V at the least, with ${ampsText(hungriest(yard).lightAmps)} drawn`,
    why: 'The standard asks for 12 V at the rails at full load. Less only makes locos slower.',
    cure:
      low.length > 0
        ? 'Nothing must be done; a supply of a volt or two more would meet it.'
        : 'Nothing to do.',
    source: 'NMRA S-9 cl. I.A'
  };
}

/** Volts at every road with the hungriest loco, and what the wires cost. */
export const running: Check = {
  id: 'running',
  title: 'Will the far road crawl?',
  run(yard, { dropShare }) {
    const all = roads(yard)
      .filter((road) => liveRoads(yard, roadScene({ yard, roads: [road] })).has(road))
      .map((road) => roadVolts(yard, road, hungriest(yard)));
    if (all.length === 0) return [];
    const worst = all.reduce((least, each) => (each.running < least.running ? each : least));
    return [worstFinding(yard, worst, dropShare), railheadFinding(yard, all)];
  }
};
