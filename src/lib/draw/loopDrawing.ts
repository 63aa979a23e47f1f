import { namesOf, sampleLoops, wiresText, type Loop, type LoopStep } from '../book';
import type { Yard } from '../yard';
import { dot, path, PX, round, symbol, text } from './circuitStrip';
import type { Drawing } from './drawing';
import type { Spanned } from './strips';
import { strokesOf } from './symbol';
import { page } from './tiles';

/** Height of one loop, of its feed and of its return, mm. */
const TALL = 64;
const OUT = 20;
const HOME = 48;
/** The controller's and the loco's middle. */
const WEST = 14;
const EAST = page.width - 18;

/** Steps side by side along one line: a wire has its number above, a part its symbol and its names. */
function along(
  steps: readonly LoopStep[],
  y: number,
  names: ReadonlyMap<string, string>
): readonly Spanned[] {
  const slot = (EAST - WEST) / Math.max(steps.length, 1);
  return steps.flatMap((step, index): readonly Spanned[] => {
    const x = WEST + (index + 0.5) * slot;
    const ends = [x - slot / 2, x + slot / 2] as const;
    const beside = steps[index - 1];
    if (step.kind === 'wires')
      return [
        path(ends.map((end) => ({ x: end, y }))),
        ...(beside?.kind === 'wires' ? [dot({ x: ends[0], y })] : []),
        text({ x, y: y - 1.6 }, wiresText(step.numbers), { size: 2.8, anchor: 'middle' })
      ];
    const { part } = step;
    const plug = part.kind === 'plug';
    const half = plug ? 0 : 24 * PX;
    const strokes = strokesOf({ kind: part.kind, width: plug ? 20 : 48, closed: plug });
    return [
      path([
        { x: ends[0], y },
        { x: x - half, y }
      ]),
      path([
        { x: x + half, y },
        { x: ends[1], y }
      ]),
      symbol(strokes, { x, y }, 0),
      text({ x, y: y + 5 }, names.get(part.id) ?? '', { anchor: 'middle', bold: true }),
      text({ x, y: y + 8.6 }, part.id, { size: 2.4, anchor: 'middle' })
    ];
  });
}

/** The way home as it lies from west to east. */
const backwards = (steps: readonly LoopStep[]): readonly LoopStep[] =>
  steps
    .toReversed()
    .map((step) =>
      step.kind === 'wires' ? { ...step, numbers: step.numbers.toReversed() } : step
    );

/** One road's loop: out along the top, through the loco, home along the bottom. */
function loop(
  { road, controller, out, home }: Loop,
  names: ReadonlyMap<string, string>,
  top: number
) {
  const [feed, back] = [top + OUT, top + HOME];
  const middle = (feed + back) / 2;
  return [
    text({ x: WEST - 8, y: top + 7 }, `Road ${road}: one row is one simple circuit`, {
      size: 3.6,
      bold: true
    }),
    path([
      { x: WEST, y: feed },
      { x: WEST, y: back }
    ]),
    ...round({ x: WEST, y: middle }, 'G', 5),
    text({ x: WEST + 6.2, y: middle + 1.2 }, names.get(controller) ?? ''),
    ...along(out, feed, names),
    ...along(backwards(home), back, names),
    path([
      { x: EAST, y: feed },
      { x: EAST, y: back }
    ]),
    ...[feed, back].map((y) =>
      path(
        [
          { x: EAST - 4, y },
          { x: EAST + 10, y }
        ],
        'bold'
      )
    ),
    ...round({ x: EAST, y: middle }, 'M', 4.5),
    text({ x: EAST + 6, y: middle + 1.2 }, 'loco', { size: 2.8 }),
    text({ x: EAST + 3, y: feed - 2 }, 'feed rail', { size: 2.4, anchor: 'middle' }),
    text({ x: EAST + 3, y: back + 4 }, 'return rail', { size: 2.4, anchor: 'middle' })
  ];
}

/** The sample roads, each drawn as one loop with the numbers of its wires. */
export function loopDrawing(yard: Yard): Drawing {
  const names = namesOf(yard);
  const loops = sampleLoops(yard);
  return {
    id: 'sample-road',
    title: 'Circuit of a sample road',
    width: page.width,
    height: loops.length * TALL,
    shapes: loops.flatMap((each, index) =>
      loop(each, names, index * TALL).map(({ shape }) => shape)
    )
  };
}
