import type { Drawing, Shape } from './drawing';
import { page } from './tiles';

/** A shape with the stretch it takes from west to east, mm. */
export interface Spanned {
  readonly from: number;
  readonly to: number;
  readonly shape: Shape;
}

/** A line that goes on beyond a place at which a drawing is cut. */
export interface Reference {
  readonly y: number;
  readonly text: string;
}

/** A drawing as long as it likes, mm, and where it may be cut. */
export interface Strip {
  readonly id: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Spanned[];
  /** Places to cut at, west to east. */
  readonly cuts: readonly number[];
  /** Lines that cross a place. */
  readonly crossing: (x: number) => readonly Reference[];
}

/** Room at both ends for references, and above each part for its title. */
const EDGE = 12;
const HEAD = 9;
const most = page.width - 2 * EDGE;
/** Height of a part that takes a whole page, mm. */
export const tallest = page.height - HEAD;

/** A stretch of a strip that fits a page. */
interface Part {
  readonly from: number;
  readonly to: number;
}

/** Cuts as few times as the width of a page allows. */
function partsOf({ width, cuts }: Strip): readonly Part[] {
  const parts: Part[] = [];
  let from = 0;
  while (width - from > most) {
    const start = from;
    const to = cuts.filter((x) => x > start && x - start <= most).at(-1) ?? start + most;
    parts.push({ from, to });
    from = to;
  }
  return [...parts, { from, to: width }];
}

/** One part with its title, and at each cut the lines that go on, by number. */
function partShapes(strip: Strip, parts: readonly Part[], index: number, top: number) {
  const { from, to } = parts[index] as Part;
  const y = top + HEAD;
  const words = (side: 'west' | 'east'): readonly Shape[] => {
    const x = side === 'west' ? EDGE - 1 : EDGE + to - from + 1;
    const anchor = side === 'west' ? 'end' : 'start';
    const part = index + (side === 'west' ? 0 : 2);
    return [
      { kind: 'text', x, y: y - 1, size: 2.6, anchor, bold: true, text: `part ${part}` },
      ...strip.crossing(side === 'west' ? from : to).map((line): Shape => ({
        kind: 'text',
        x,
        y: y + line.y + 0.9,
        size: 2.4,
        anchor,
        text: line.text
      }))
    ];
  };
  const title =
    parts.length > 1 ? `${strip.title}: part ${index + 1} of ${parts.length}` : strip.title;
  return [
    { kind: 'text', x: EDGE, y: top + 4, size: 3.6, bold: true, text: title },
    {
      kind: 'window',
      x: EDGE,
      y,
      width: to - from,
      height: strip.height,
      from: { x: from, y: 0 },
      shapes: strip.shapes
        .filter((each) => each.to >= from && each.from <= to)
        .map(({ shape }) => shape)
    },
    ...(index > 0 ? words('west') : []),
    ...(index < parts.length - 1 ? words('east') : [])
  ] as const satisfies readonly Shape[];
}

/** A strip on pages that fit A4 and Letter: cut into parts, which name the wires that go on and the part where. */
export function sheetsOf(strip: Strip): readonly Drawing[] {
  const parts = partsOf(strip);
  const tall = strip.height + HEAD;
  const each = Math.max(Math.floor(page.height / tall), 1);
  const sheets = Math.ceil(parts.length / each);
  return Array.from({ length: sheets }, (_, sheet): Drawing => {
    const own = parts.map((_part, index) => index).slice(sheet * each, (sheet + 1) * each);
    return {
      id: sheets > 1 ? `${strip.id}-${sheet + 1}` : strip.id,
      title: sheets > 1 ? `${strip.title}, sheet ${sheet + 1} of ${sheets}` : strip.title,
      width: page.width,
      height: own.length * tall,
      shapes: own.flatMap((part, row) => partShapes(strip, parts, part, row * tall))
    };
  });
}
