import { namesOf, wiresOf } from '../book';
import {
  admit,
  apply,
  fit,
  SceneSchema,
  wireColours,
  type Run,
  type Scene,
  type Yard
} from '../yard';
import { diagramLayout, LANE, type DiagramLayout } from './diagram';
import { lineOf, type Shape } from './drawing';
import type { Point, Polyline } from './geometry';
import type { Glyph, LaidRun } from './run';
import { tallest, type Reference, type Spanned, type Strip } from './strips';
import { strokesOf, type Stroke } from './symbol';

/** A pixel of the layout on paper, mm. */
export const PX = 0.22;
/** East of a road's column: where the drawing may be cut, px. */
const CUT = 58;
/** Half the length of a rail, px. */
const RAIL = 18;
type Text = Extract<Shape, { kind: 'text' }>;

const onPaper = ({ x, y }: Point): Point => ({ x: x * PX, y: y * PX });

/** A shape that reaches so far, mm. */
const spanned = (shape: Shape, from: number, to = from): Spanned => ({
  shape,
  from: from - 12,
  to: to + 12
});

export const text = (at: Point, words: string, rest: Partial<Text> = {}): Spanned =>
  spanned({ kind: 'text', ...at, size: 3, text: words, ...rest }, at.x);

export function path(points: Polyline, pen: 'line' | 'bold' = 'line'): Spanned {
  const xs = points.map(({ x }) => x);
  return spanned({ kind: 'path', d: lineOf(...points), pen }, Math.min(...xs), Math.max(...xs));
}

const looks = {
  line: { pen: 'line' },
  link: { pen: 'thin', dashed: true },
  body: { pen: 'line', fill: 'paper' },
  solid: { fill: 'ink' }
} as const;

/** A symbol's lines at a place on paper. */
export const symbol = (strokes: readonly Stroke[], { x, y }: Point, turn: number): Spanned =>
  spanned(
    {
      kind: 'group',
      x,
      y,
      turn,
      scale: PX,
      shapes: strokes.map(({ d, role }): Shape => ({ kind: 'path', d, ...looks[role] }))
    },
    x
  );

/** A round symbol with its letter. */
export function round(at: Point, letter: string, r = 4.5): readonly Spanned[] {
  return [
    spanned({ kind: 'circle', ...at, r, pen: 'line', fill: 'paper' }, at.x),
    text({ x: at.x, y: at.y + 1.2 }, letter, { size: 3.6, anchor: 'middle', bold: true })
  ];
}

/** A joint. */
export const dot = ({ x, y }: Point): Spanned =>
  spanned({ kind: 'circle', x, y, r: 0.8, fill: 'ink' }, x);

function glyphShapes(glyph: Glyph, name: string): readonly Spanned[] {
  const upright = Math.abs(glyph.angle) === 90;
  const { x, y } = onPaper(glyph.middle);
  return [
    symbol(strokesOf(glyph), { x, y }, upright ? -90 : 0),
    upright
      ? text({ x: x + 2.6, y: y + 1.1 }, name, { size: 2.7 })
      : text({ x: x - 3, y: y - 1.2 }, name, { anchor: 'end', size: 2.5 })
  ];
}

/** A wire of the diagram, px, with its number in the schedule; a rail joiner has none. */
interface Numbered {
  readonly line: Polyline;
  readonly number: number | undefined;
}

/** The stretches of a run with their wires' numbers: where a tag is a lug of its first part there is no wire before it. */
function numbered({ stretches }: LaidRun, numbers: readonly number[]): readonly Numbered[] {
  const bare = stretches.length - numbers.length;
  return stretches.map(({ line }, index) => ({ line, number: numbers[index - bare] }));
}

/** A wire's number stands beside its middle, or above where it runs level. */
function numberText({ line, number }: Numbered): readonly Spanned[] {
  if (number === undefined) return [];
  const legs = line.slice(1).map((end, index) => [line[index] as Point, end] as const);
  const length = ([a, b]: readonly [Point, Point]) => Math.hypot(b.x - a.x, b.y - a.y);
  const [a, b] = legs.reduce((best, leg) => (length(leg) > length(best) ? leg : best));
  if (length([a, b]) < 8) return [];
  const upright = a.x === b.x;
  const [west, half] = [Math.min(a.x, b.x), Math.abs(b.x - a.x) / 2];
  const at = onPaper(
    upright ? { x: a.x + 5, y: (a.y + b.y) / 2 + 4 } : { x: west + Math.min(half, 24), y: a.y - 4 }
  );
  return [text(at, String(number), { size: 2.4, anchor: upright ? 'start' : 'middle' })];
}

/** Rails of two sections that a joiner keeps together, px. */
const joined = (runs: readonly Run[], { paths }: DiagramLayout): readonly Polyline[] =>
  runs
    .filter(({ id }) => /^(feed|return) joiner /.test(id))
    .flatMap(({ job, from, to }) => {
      const [a, b] = [from, to].map((node) => paths.find(({ road }) => node.endsWith(` ${road}`)));
      if (!a || !b || job === 'lamp') return [];
      const [west, east] = a.x < b.x ? [a, b] : [b, a];
      return [
        [
          { x: west.x + RAIL, y: west[job] },
          { x: east.x - RAIL, y: east[job] }
        ]
      ];
    });

function supplyShapes(layout: DiagramLayout, yard: Yard, names: ReadonlyMap<string, string>) {
  const { supply, supplies } = layout;
  const colours = wireColours(yard);
  return supplies.flatMap(({ place, x }): readonly Spanned[] => {
    const middle = onPaper({ x, y: supply.y });
    const ends = [
      { x, y: supply.feed },
      { x, y: supply.return }
    ].map(onPaper);
    const letters = colours
      .filter(({ wire }) => wire === 'feed' || wire === 'return')
      .map(({ wire, code }) =>
        text(
          {
            x: middle.x + 2,
            y: (ends[wire === 'feed' ? 0 : 1] as Point).y + 4
          },
          code,
          { size: 2.8, bold: true }
        )
      );
    return [
      path(ends),
      ...round(middle, 'G', 5),
      text({ x: middle.x + 6.2, y: middle.y + 1.2 }, names.get(place) ?? ''),
      ...letters
    ];
  });
}

/** Lines that cross `x` px, with the numbers of their wires. */
const crossed = (wires: readonly Numbered[], x: number): readonly Reference[] =>
  wires.flatMap(({ line, number }) =>
    line.slice(1).flatMap((end, index): readonly Reference[] => {
      const start = line[index] as Point;
      const passes = Math.min(start.x, end.x) < x && Math.max(start.x, end.x) > x;
      return passes ? [{ y: start.y * PX, text: number === undefined ? 'rail' : `${number}` }] : [];
    })
  );

/** The layout, its passing wires closer to each other where one part would be higher than a page. */
function laidOut(yard: Yard, runs: readonly Run[], scene: Scene): DiagramLayout {
  const lay = (lane: number) => diagramLayout(yard, runs, { scene, width: 0, lane });
  const [bare, one] = [lay(0).height, lay(1).height];
  const levels = one - bare;
  return lay(levels === 0 ? LANE : Math.min(LANE, (tallest / PX - bare) / levels));
}

/** The whole circuit of a yard without its lamps: plug in, pin out, every switch off. */
export function circuitStrip(yard: Yard): Strip {
  const scene = fit('scene', yard, admit('scene', SceneSchema, { pin: 'out' }));
  const runs = apply(yard, scene);
  const layout = laidOut(yard, runs, scene);
  const names = namesOf(yard);
  const schedule = wiresOf(yard);
  const laid = layout.runs.filter(({ stretches }) => stretches.length > 0);
  const wires = [
    ...laid.flatMap((each) =>
      numbered(
        each,
        schedule.filter(({ run }) => run === each.run.id).map(({ number }) => number)
      )
    ),
    ...joined(runs, layout).map((line): Numbered => ({ line, number: undefined }))
  ];
  const rails = layout.paths.flatMap(({ x, feed, return: home }) =>
    [feed, home].map((y) => [
      { x: x - RAIL, y },
      { x: x + RAIL, y }
    ])
  );
  return {
    id: 'circuit',
    title: 'Circuit of the whole yard',
    width: layout.width * PX,
    height: layout.height * PX,
    cuts: layout.paths.map(({ x }) => (x + CUT) * PX),
    crossing: (x) => crossed(wires, x / PX),
    shapes: [
      ...wires.map(({ line }) => path(line.map(onPaper))),
      ...rails.map((line) => path(line.map(onPaper), 'bold')),
      ...layout.joints.map((joint) => dot(onPaper(joint))),
      ...supplyShapes(layout, yard, names),
      ...laid.flatMap(({ glyphs }) =>
        glyphs.flatMap((glyph) => glyphShapes(glyph, names.get(glyph.id) ?? ''))
      ),
      ...wires.flatMap(numberText),
      ...layout.paths.map(({ road, x, feed, return: home }) =>
        text(onPaper({ x, y: (feed + home) / 2 + 5 }), road, { anchor: 'middle', bold: true })
      )
    ]
  };
}
