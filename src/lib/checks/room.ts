import {
  admit,
  BorderError,
  fit,
  fleetOf,
  holes,
  roadsOf,
  SceneSchema,
  stockNamed,
  wholeRoads,
  type Loco,
  type Road,
  type Scene,
  type Yard
} from '../yard';
import type { Check, Finding } from './finding';
import { roadScene } from './road-scene';

/** The longest loco of a yard. */
const longest = (yard: Yard): Loco =>
  fleetOf(yard).reduce((a, b) => (b.lengthMm > a.lengthMm ? b : a));

const kindWords = {
  running: 'running road',
  storage: 'storage road',
  release: 'release road',
  stabling: 'stabling road'
};

/** Whether the deck slides past fixed roads. */
const slides = (yard: Yard): boolean => holes(yard).length > 0;

/** Length over buffers of a coach, mm. */
const COACH_MM = stockNamed('coach')?.lengthMm ?? 0;

const coachWords = (count: number): string => `${count} ${count === 1 ? 'coach' : 'coaches'}`;

/** A loco at the east end of a road with coaches behind it; undefined where the rails do not hold them all. */
function trainScene(yard: Yard, whole: Road, loco: Loco, coaches = 0): Scene | undefined {
  const { name: road, lengthMm } = roadsOf(yard).findLast(
    (each) => each.whole === whole.name
  ) as Road;
  const names = Array.from({ length: coaches }, (_, index) =>
    index === 0 ? 'coach' : `coach ${index + 1}`
  );
  const stock = Object.fromEntries(
    names.map((name, index) => [name, { behind: names[index - 1] ?? loco.name }])
  );
  const locos = { [loco.name]: { road, atMm: lengthMm - loco.lengthMm / 2 } };
  const { deck, pin } = roadScene({ yard, roads: [road] });
  try {
    return fit('scene', yard, admit('scene', SceneSchema, { deck, pin, locos, stock }));
  } catch (error) {
    if (error instanceof BorderError) return undefined;
    throw error;
  }
}

const boardOf = (yard: Yard, scene: Scene | undefined): Pick<Finding, 'board'> =>
  scene ? { board: { yard, scene } } : {};

function tooLongFinding(yard: Yard, roads: readonly Road[]): Finding {
  const [first] = roads as readonly [Road, ...Road[]];
  const loco = longest(yard);
  return {
    grade: 'must fix',
    what: `${loco.name} is too long for a ${kindWords[first.kind]}.`,
    where: roads.map(({ name }) => name),
    amount: `${loco.lengthMm} mm on ${first.lengthMm} mm, ${loco.lengthMm - first.lengthMm} mm too much`,
    why: 'It stands across the gap, and is struck when the deck slides.',
    cure: `Make the road ${loco.lengthMm} mm long or more, or keep ${loco.name} off it.`,
    source: 'measured on this yard',
    ...boardOf(yard, trainScene(yard, first, loco))
  };
}

function fitsFinding(yard: Yard, roads: readonly Road[]): Finding {
  const loco = longest(yard);
  const least = roads.reduce((a, b) => (b.lengthMm < a.lengthMm ? b : a));
  return {
    grade: 'fine',
    what: `The longest loco, ${loco.name}, fits ${roads.length === wholeRoads(yard).length ? 'every road' : `${roads.length} of ${wholeRoads(yard).length} roads`}.`,
    where: roads.map(({ name }) => name),
    amount: `${loco.lengthMm} mm, on road ${least.name} of ${least.lengthMm} mm: ${least.lengthMm - loco.lengthMm} mm to spare`,
    why: slides(yard)
      ? 'A loco that stands out over the edge fouls the gap when the deck slides.'
      : 'A loco that stands out over the end is in the way.',
    cure: 'Nothing to do.',
    source: 'measured on this yard',
    ...boardOf(yard, trainScene(yard, least, loco))
  };
}

/** How many coaches stand clear of both ends behind the longest loco. */
function trainFinding(yard: Yard, roads: readonly Road[]): Finding {
  const loco = longest(yard);
  const { name, lengthMm } = loco;
  const least = Math.min(...roads.map((road) => road.lengthMm));
  const coaches = Math.max(0, Math.floor((least - lengthMm) / COACH_MM));
  const train = (count: number) => lengthMm + count * COACH_MM;
  const [road] = roads as readonly [Road, ...Road[]];
  return {
    grade: coaches === 0 ? 'think' : 'fine',
    what:
      coaches === 0
        ? `${name} with one coach is too long a train for a storage road.`
        : `${name} and ${coachWords(coaches)} fit a storage road; with one more the train ${slides(yard) ? 'fouls the gap' : 'stands out over the end'}.`,
    where: roads.map((each) => each.name),
    amount: `${train(Math.max(coaches, 1))} mm on ${least} mm; with one more ${train(Math.max(coaches, 1) + 1)} mm`,
    why: slides(yard)
      ? 'A train across the end of the deck is torn apart, or tears the rails, when the deck slides.'
      : 'A train that stands out over the end is in the way.',
    cure:
      coaches === 0
        ? 'Make the deck longer, or take shorter stock.'
        : slides(yard)
          ? 'Before you pull the pin, look that nothing stands across an end of the deck.'
          : 'Nothing to do.',
    source: `a coach of ${COACH_MM} mm over buffers, common practice`,
    ...boardOf(
      yard,
      trainScene(yard, road, loco, coaches + 1) ?? trainScene(yard, road, loco, coaches)
    )
  };
}

/** Whether stock fits its road. */
export const room: Check = {
  id: 'room',
  title: 'Does everything fit?',
  run(yard: Yard) {
    const all = wholeRoads(yard);
    const of = (kind: Road['kind']) => all.filter((road) => road.kind === kind);
    const long = all.filter(({ lengthMm }) => lengthMm < longest(yard).lengthMm);
    const fits = all.filter((road) => !long.includes(road));
    return [
      ...[...new Set(long.map(({ kind }) => kind))].map((kind) => tooLongFinding(yard, of(kind))),
      ...(fits.length > 0 ? [fitsFinding(yard, fits)] : []),
      trainFinding(yard, of('storage'))
    ];
  }
};
