import { fleetOf, roadsOf, type Loco, type Road, type Yard } from '../yard';
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

/** Whether stock fits its road. */
export const room: Check = {
  id: 'room',
  title: 'Does everything fit?',
  run(yard: Yard) {
    const all = roadsOf(yard);
    return [...new Set(all.map(({ kind }) => kind))].map((kind) =>
      kindFinding(
        yard,
        all.filter((road) => road.kind === kind)
      )
    );
  }
};
