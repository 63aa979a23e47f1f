import { sectionsOf } from './cuts';
import { once } from './once';
import type { Standing } from './standing';
import type { Yard } from './yard';

/** One road, or one section of a road that is cut: what it is for, where it lies. */
export interface Road {
  readonly name: string;
  readonly kind: 'running' | 'storage' | 'release' | 'stabling';
  /** What it is laid on: the deck, or the fixed ground west or east of it. */
  readonly bed: 'deck' | 'west' | 'east';
  readonly lengthMm: number;
  /** A deck road: south of the first deck road. A fixed road: south of the line of the running road Q. */
  readonly southMm: number;
  /** Name of the whole road; its own unless it is a section. */
  readonly whole: string;
  /** A section's west end, mm from that of the whole road. */
  readonly startMm: number;
  /** The sections beyond an insulated gap. */
  readonly next: { readonly west?: string; readonly east?: string };
}

/** Names of the first and the second running road, where there are; no deck road has them. */
const RUNNING_ROADS = ['Q', 'QQ'] as const;
/** Name of the release road, where there is one. */
const RELEASE_ROAD = 'R';

/** Letters of the storage roads, north to south: A to Z without Q and R, then AA, AB … */
export const storageName = (index: number): string => {
  const letters = 'ABCDEFGHIJKLMNOPSTUVWXYZ';
  const round = Math.floor(index / letters.length);
  return `${round === 0 ? '' : letters[round - 1]}${letters[index % letters.length]}`;
};

/** The southernmost deck road: the release road, or else the last storage road. */
export const lastDeckRoad = ({
  deckRoads,
  releaseRoad
}: Pick<Laid, 'deckRoads' | 'releaseRoad'>): string =>
  releaseRoad ? RELEASE_ROAD : storageName(deckRoads - 1);

export type RunningEnds = 'west' | 'east' | 'both' | 'two west' | 'two east';
/** The ends of the deck which the running roads join, the first road's first. */
export const runningEnds: Readonly<Record<RunningEnds, readonly ('west' | 'east')[]>> = {
  west: ['west'],
  east: ['east'],
  both: ['west', 'east'],
  'two west': ['west', 'west'],
  'two east': ['east', 'east']
};

const upTo = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, index) => index);

/** What decides where a yard's roads lie, before any is cut. */
interface Laid {
  readonly deckRoads: number;
  readonly stablingRoads: number;
  readonly releaseRoad: boolean;
  readonly runningRoad: 'none' | 'direct' | 'interlocked';
  readonly runningEnds: RunningEnds;
  readonly roadLengthMm: number;
  readonly runningLengthMm: number;
  readonly stablingLengthMm: number;
  readonly centresMm: number;
  readonly releaseCentresMm: number;
  readonly stablingFromMm: number;
}

const whole = (road: Omit<Road, 'whole' | 'startMm' | 'next'>): Road => ({
  ...road,
  whole: road.name,
  startMm: 0,
  next: {}
});

/** The running roads. Two at one end lie side by side, the second one road-distance north of the first. */
const runningRoads = ({ runningRoad, ...yard }: Laid): readonly Road[] =>
  (runningRoad === 'none' ? [] : runningEnds[yard.runningEnds]).map((bed, index, beds) =>
    whole({
      name: RUNNING_ROADS[index] as string,
      kind: 'running',
      bed,
      lengthMm: yard.runningLengthMm,
      southMm: beds.indexOf(bed) < index ? -yard.centresMm : 0
    })
  );

/**
 * The whole roads of a yard, in the order in which feed and return visit them: those in the west, the
 * deck's north to south, running roads in the east, stabling.
 */
export const wholeRoads = once((yard: Laid): readonly Road[] => {
  const storage = upTo(yard.deckRoads).map((index) =>
    whole({
      name: storageName(index),
      kind: 'storage',
      bed: 'deck',
      lengthMm: yard.roadLengthMm,
      southMm: index * yard.centresMm
    })
  );
  const last = storage.at(-1)?.southMm ?? 0;
  const release = whole({
    name: RELEASE_ROAD,
    kind: 'release',
    bed: 'deck',
    lengthMm: yard.roadLengthMm,
    southMm: last + yard.releaseCentresMm
  });
  const stabling = upTo(yard.stablingRoads).map((index) =>
    whole({
      name: String(index + 1),
      kind: 'stabling',
      bed: 'east',
      lengthMm: yard.stablingLengthMm,
      southMm: yard.stablingFromMm + index * yard.centresMm
    })
  );
  const running = runningRoads(yard);
  return [
    ...running.filter(({ bed }) => bed === 'west'),
    ...storage,
    ...(yard.releaseRoad ? [release] : []),
    ...running.filter(({ bed }) => bed === 'east'),
    ...stabling
  ];
});

/** The roads of a yard, each cut one in its sections, in the same order. */
export const roadsOf = once((yard: Yard): readonly Road[] =>
  yard.cuts.length === 0
    ? wholeRoads(yard)
    : wholeRoads(yard).flatMap((road) => sectionsOf(road, yard.cuts))
);

/** Names of all roads, in the same order. */
export const roads = (yard: Yard): readonly string[] => roadsOf(yard).map(({ name }) => name);

/** The road called `name`; throws when the yard has none. */
export function roadNamed(yard: Yard, name: string): Road {
  const all = roadsOf(yard);
  const road = all.find((each) => each.name === name);
  if (!road)
    throw new RangeError(
      `No road '${name}'. There are ${all.map((each) => each.name).join(', ')}.`
    );
  return road;
}

/** A road's letter or number with the owner's own name, where it has one: "A Harbour". */
export const roadTitle = ({ names }: Yard, road: string): string =>
  names[road] ? `${road} ${names[road]}` : road;

/** Names of the roads on the deck, north to south. */
export const deckRoads = (yard: Yard): readonly string[] =>
  roadsOf(yard)
    .filter(({ bed }) => bed === 'deck')
    .map(({ name }) => name);

/** Where a loco stands along the whole line, mm east of the deck's west end. */
export function eastMm(yard: Yard, { road, atMm }: Standing): number {
  const { bed, startMm } = roadNamed(yard, road);
  const start = { west: -yard.runningLengthMm, deck: 0, east: yard.roadLengthMm }[bed];
  return start + startMm + atMm;
}
