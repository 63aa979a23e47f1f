import { fleetOf, stockNamed, wholeRoads, type Loco, type Road, type Yard } from '../yard';
import type { Check, Finding } from './finding';

/** The longest loco of a yard. */
const longest = (yard: Yard): Loco =>
  fleetOf(yard).reduce((a, b) => (b.lengthMm > a.lengthMm ? b : a));

const kindWords = {
  running: 'running road',
  storage: 'storage road',
  release: 'release road',
  stabling: 'stabling road'
};

function kindFinding(yard: Yard, roads: readonly Road[]): Finding {
  const [first] = roads as readonly [Road, ...Road[]];
  const { name, lengthMm } = longest(yard);
  const left = first.lengthMm - lengthMm;
  return {
    grade: left < 0 ? 'must fix' : 'fine',
    what:
      left < 0
        ? `${name} is too long for a ${kindWords[first.kind]}.`
        : `The longest loco, ${name}, fits a ${kindWords[first.kind]}.`,
    where: roads.map((road) => road.name),
    amount: `${lengthMm} mm on ${first.lengthMm} mm`,
    why: 'Stock that stands out over the edge fouls the gap when the deck slides.',
    cure:
      left < 0
        ? 'Make the road longer, or keep this loco off it.'
        : `${left} mm are left for the rest of its train.`,
    source: 'the engine'
  };
}

/** Length over buffers of a coach, mm. */
const COACH_MM = stockNamed('coach')?.lengthMm ?? 0;

/** The longest train that the storage roads hold, behind the longest loco. */
function trainFinding(yard: Yard, roads: readonly Road[]): Finding {
  const { name, lengthMm } = longest(yard);
  const least = Math.min(...roads.map((road) => road.lengthMm));
  const coaches = Math.max(0, Math.floor((least - lengthMm) / COACH_MM));
  const train = (count: number) => lengthMm + count * COACH_MM;
  return {
    grade: coaches === 0 ? 'think' : 'fine',
    what:
      coaches === 0
        ? `${name} with one coach is too long a train for a storage road.`
        : `${name} and ${coaches} ${coaches === 1 ? 'coach' : 'coaches'} fit a storage road; one more is too long.`,
    where: roads.map((road) => road.name),
    amount: `${train(Math.max(coaches, 1))} mm on ${least} mm; with one more ${train(Math.max(coaches, 1) + 1)} mm`,
    why: 'A train that stands out over the edge fouls the gap when the deck slides.',
    cure: coaches === 0 ? 'Make the deck longer.' : 'Keep longer trains off the deck.',
    source: `a coach of ${COACH_MM} mm, common practice`
  };
}

/** Whether stock fits its road. */
export const room: Check = {
  id: 'room',
  title: 'Does everything fit?',
  run(yard: Yard) {
    const all = wholeRoads(yard);
    const of = (kind: Road['kind']) => all.filter((road) => road.kind === kind);
    return [
      ...[...new Set(all.map(({ kind }) => kind))].map((kind) => kindFinding(yard, of(kind))),
      trainFinding(yard, of('storage'))
    ];
  }
};
