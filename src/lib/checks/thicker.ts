import { strandedSizes, wireAreaMm2 } from '../tables';
import { admit, joinWords, sentence, wire, YardSchema, type Yard } from '../yard';
import { wireKind, wireWords, type WireKind } from './wire-kinds';

/** Kinds of wire on the way to the rails and home. */
const onTheWay = ['main', 'link', 'dropper'] as const satisfies readonly WireKind[];
type OnTheWay = (typeof onTheWay)[number];
type Sizes = Readonly<Record<OnTheWay, string>>;

/** Metres of each kind of wire in a yard. */
function metresOf(yard: Yard): Readonly<Record<OnTheWay, number>> {
  const metres = { main: 0, link: 0, dropper: 0, lamp: 0 };
  for (const part of wire(yard).flatMap(({ parts }) => parts)) {
    const kind = wireKind(yard, part);
    if (kind) metres[kind] += part.wire?.lengthM ?? 0;
  }
  return metres;
}

/** A size, and every usual one with more copper. */
const upFrom = (size: string): readonly string[] => [
  size,
  ...strandedSizes.filter((each) => wireAreaMm2(each) > wireAreaMm2(size))
];

/** A yard with some of its wires thicker. */
export interface Thicker {
  readonly words: string;
  /** Copper in its wires, mm²·m. */
  readonly copper: number;
  readonly yard: Yard;
}

/** Every choice of usual sizes, none thinner than now and not all as now, the one with least copper first. */
export function thickerWires(yard: Yard): readonly Thicker[] {
  const { main, link, dropper } = yard.wires;
  const metres = metresOf(yard);
  const all = upFrom(main.size).flatMap((forMain) =>
    upFrom(link.size).flatMap((forLink) =>
      upFrom(dropper.size).map((forDropper) => ({
        main: forMain,
        link: forLink,
        dropper: forDropper
      }))
    )
  );
  const copperOf = (sizes: Sizes) =>
    onTheWay.reduce((sum, kind) => sum + wireAreaMm2(sizes[kind]) * metres[kind], 0);
  return all
    .slice(1)
    .map((sizes) => ({ sizes, copper: copperOf(sizes) }))
    .sort((a, b) => a.copper - b.copper)
    .map(({ sizes, copper }) => ({ copper, ...changed(yard, sizes, metres) }));
}

/** The yard with these sizes, and what is to be bought for it. */
function changed(yard: Yard, sizes: Sizes, metres: Readonly<Record<OnTheWay, number>>) {
  const kinds = onTheWay.filter((kind) => sizes[kind] !== yard.wires[kind].size);
  const words = kinds.map(
    (kind) =>
      `${sizes[kind]} wire instead of ${yard.wires[kind].size} for the ${wireWords[kind]} (${metres[kind].toFixed(1)} m)`
  );
  const wires = Object.fromEntries(
    onTheWay.map((kind) => [kind, { ...yard.wires[kind], size: sizes[kind] }])
  );
  return {
    words: sentence(`use ${joinWords(words, 'and')}`),
    yard: admit('yard', YardSchema, { ...yard, wires: { ...yard.wires, ...wires } })
  };
}
