import { placed, type Placed, type Run } from '../yard';
import { at, cut, lengthOf, longest, type Point, type Polyline } from './geometry';

/** A stretch of wire with the node whose level it shows. */
export interface Stretch {
  readonly line: Polyline;
  readonly node: string;
  /** The part whose current flows in it. */
  readonly part: string;
}

/** A drawn part that is no plain wire: where its middle is, and how it lies. */
export interface Glyph {
  readonly id: string;
  readonly kind: keyof typeof widths;
  readonly closed: boolean;
  readonly ohms: number;
  readonly middle: Point;
  readonly angle: number;
  readonly width: number;
  /** Nodes before and after it. */
  readonly from: string;
  readonly to: string;
}

/** Middle of a part, and the heading of its wire in degrees. */
export type Anchor = Point & { readonly angle: number };

/** A run laid along a line. */
export interface LaidRun {
  readonly stretches: readonly Stretch[];
  readonly glyphs: readonly Glyph[];
  /** Middle of every part, for rings and numbers. */
  readonly anchors: ReadonlyMap<string, Anchor>;
}

/** How close parts stand along a run, px. */
export interface Pitch {
  /** Room between two parts. */
  readonly space: number;
  /** Width of a switch. */
  readonly blade: number;
}

/** Where there is room, and on a narrow sheet. */
export const roomy: Pitch = { space: 18, blade: 48 };
export const tight: Pitch = { space: 9, blade: 38 };

/** Width a part takes along its run, px; plain wire takes what is left. */
const widths = {
  toggle: 'blade',
  selector: 'blade',
  push: 'blade',
  'pin contact': 'blade',
  plug: 20,
  resistor: 40,
  meter: 28,
  metal: 0,
  break: 24
} as const;

const widthOf = (kind: Glyph['kind'], { blade }: Pitch): number =>
  widths[kind] === 'blade' ? blade : widths[kind];

const glyphKind = (part: Placed): Glyph['kind'] | undefined => {
  if (part.kind === 'wire') return part.closed ? undefined : 'break';
  return part.kind in widths ? (part.kind as Glyph['kind']) : undefined;
};

/** Room a run needs for its parts, px. */
export const roomFor = (run: Run, pitch = roomy): number =>
  placed(run).reduce((sum, part) => {
    const kind = glyphKind(part);
    return kind ? sum + widthOf(kind, pitch) + pitch.space : sum;
  }, pitch.space);

/** Share of the free length before the first part: plug contacts of the return stand near the deck. */
const slackBefore = ({ id, job }: Run): number =>
  id.startsWith('plug ') ? 0 : job === 'feed' ? 0.35 : 0.5;

/** How a run is laid: how close its parts stand, and the share of the free length before the first. */
interface Laying {
  readonly pitch?: Pitch;
  readonly before?: number | undefined;
}

/** Lays a run along a line: its parts share the longest straight piece, wire fills the rest. */
export function layRun(
  run: Run,
  line: Polyline,
  { pitch = roomy, before = slackBefore(run) }: Laying = {}
): LaidRun {
  const parts = placed(run);
  const straight = longest(line);
  const slack = Math.max(straight.to - straight.from - roomFor(run, pitch), 0);
  let along = straight.from + pitch.space + slack * before;
  let begun = 0;
  let node = run.from;
  const stretches: Stretch[] = [];
  const glyphs: Glyph[] = [];
  for (const part of parts) {
    const kind = glyphKind(part);
    if (!kind) continue;
    const width = widthOf(kind, pitch);
    const gap = kind === 'plug' && part.closed ? 0 : width;
    const edge = along + (width - gap) / 2;
    stretches.push({ line: cut(line, begun, edge), node, part: part.id });
    const middle = at(line, along + width / 2);
    glyphs.push({ ...part, kind, width, middle, angle: middle.angle });
    begun = edge + gap;
    along += width + pitch.space;
    node = part.to;
  }
  const last = parts.at(-1) as Placed;
  stretches.push({ line: cut(line, begun, lengthOf(line)), node, part: last.id });
  return { stretches, glyphs, anchors: anchors(parts, stretches, glyphs) };
}

function anchors(
  parts: readonly Placed[],
  stretches: readonly Stretch[],
  glyphs: readonly Glyph[]
): ReadonlyMap<string, Anchor> {
  const middleOf = ({ line }: Stretch): Anchor => {
    const { from, to } = longest(line);
    return at(line, (from + to) / 2);
  };
  return new Map(
    parts.map((part, index) => {
      const glyph = glyphs.find((each) => each.id === part.id);
      const before = glyphs.filter((each) =>
        parts.slice(0, index).some((earlier) => earlier.id === each.id)
      ).length;
      return [
        part.id,
        glyph ? { ...glyph.middle, angle: glyph.angle } : middleOf(stretches[before] as Stretch)
      ];
    })
  );
}
