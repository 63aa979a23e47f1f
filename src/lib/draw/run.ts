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

/** Width a part takes along its run, px; plain wire takes what is left. */
const widths = {
  toggle: 48,
  selector: 48,
  push: 48,
  'pin contact': 48,
  plug: 20,
  resistor: 40,
  meter: 28,
  metal: 0,
  break: 24
} as const;

/** Room between two parts, px. */
export const SPACE = 18;

const glyphKind = (part: Placed): Glyph['kind'] | undefined => {
  if (part.kind === 'wire') return part.closed ? undefined : 'break';
  return part.kind in widths ? (part.kind as Glyph['kind']) : undefined;
};

/** Room a run needs for its parts, px. */
export const roomFor = (run: Run): number =>
  placed(run).reduce((sum, part) => {
    const kind = glyphKind(part);
    return kind ? sum + widths[kind] + SPACE : sum;
  }, SPACE);

/** Share of the free length before the first part: plug contacts of the return stand near the deck. */
const slackBefore = ({ id, job }: Run): number =>
  id.startsWith('plug ') ? 0 : job === 'feed' ? 0.35 : 0.5;

/** Lays a run along a line: its parts share the longest straight piece, wire fills the rest. */
export function layRun(run: Run, line: Polyline): LaidRun {
  const parts = placed(run);
  const straight = longest(line);
  const slack = Math.max(straight.to - straight.from - roomFor(run), 0);
  let along = straight.from + SPACE + slack * slackBefore(run);
  let begun = 0;
  let node = run.from;
  const stretches: Stretch[] = [];
  const glyphs: Glyph[] = [];
  for (const part of parts) {
    const kind = glyphKind(part);
    if (!kind) continue;
    const width = widths[kind];
    const gap = kind === 'plug' && part.closed ? 0 : width;
    const edge = along + (width - gap) / 2;
    stretches.push({ line: cut(line, begun, edge), node, part: part.id });
    const middle = at(line, along + width / 2);
    glyphs.push({ ...part, kind, width, middle, angle: middle.angle });
    begun = edge + gap;
    along += width + SPACE;
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
