import {
  ampsText,
  CENTRE_VOLTS,
  feedOf,
  levelWords,
  voltsText,
  type Reading,
  type Run,
  type Scene,
  type Yard
} from '../yard';
import { secondReturnAmps } from './controllers';
import { crossings, type Over } from './crossings';
import type { Point, Polyline } from './geometry';
import { inkOf, isPartWay, untold, type Ink } from './ink';
import type { Marks } from './mark';
import { isClose, isCondensed, isWide } from './frame';
import { isOwnSwitch, vehiclesOn, type RowsLayout } from './rows';

/** What the rows view is made from. */
export interface RowsSubject {
  readonly yard: Yard;
  readonly layout: RowsLayout;
  readonly reading: Reading;
  readonly scene: Scene;
  readonly marks: Marks;
}

/** What wires are drawn from. */
type WiresSubject = Pick<RowsSubject, 'reading' | 'marks'> & {
  readonly layout: Pick<RowsLayout, 'runs'>;
};

/** A conductor ready to be drawn. */
export interface Drawn {
  readonly key: string;
  readonly line: Polyline;
  readonly ink: Ink;
  readonly amps: number;
  readonly width: number;
  readonly square: boolean;
}

/** Words or figures beside the drawing. */
export interface Tag {
  readonly key: string;
  readonly at: Point;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** Least current that is told, A: less would read 0.00 A. */
const TOLD_AMPS = 0.005;

/** Whether a road's result may be told. */
export const isTold = (marks: Marks, road: string | undefined): boolean =>
  road === undefined || !marks.untold.includes(road);

/** Whether a call waits, so that something is not told. */
const isPending = (marks: Marks): boolean => marks.untold.length > 0;

/** While a call waits, a leg shows only the terminal that it is joined to: more could tell the result. */
const legInk = (marks: Marks, road: string | undefined, ink: Ink): Ink =>
  road === undefined && isPending(marks) && (ink.broken || !['feed', 'return'].includes(ink.fill))
    ? untold
    : ink;

/** The wire between the return terminals of two controllers; none with one. */
export const secondReturn = ({ yard, layout, reading, marks }: RowsSubject): readonly Drawn[] =>
  layout.secondReturn.length === 0
    ? []
    : [
        {
          key: 'second return',
          line: layout.secondReturn,
          ink: legInk(marks, undefined, inkOf(reading.level('return'))),
          amps: isPending(marks) ? 0 : secondReturnAmps(yard, reading),
          width: 7,
          square: true
        }
      ];

const keyOf = (run: Run, stretch: number): string => `${run.id} ${stretch}`;

/** Every wire, with its ink and current. */
export const wires = ({ layout, reading, marks }: WiresSubject): readonly Drawn[] =>
  layout.runs.flatMap(({ run, stretches }) =>
    stretches.map(({ line, node, part }, index) => ({
      key: keyOf(run, index),
      line,
      ink: isTold(marks, run.road) ? legInk(marks, run.road, inkOf(reading.level(node))) : untold,
      amps:
        isTold(marks, run.road) && !(run.road === undefined && isPending(marks))
          ? reading.amps(part)
          : 0,
      width: 7,
      square: run.road === undefined
    }))
  );

/** Where wires cross others without a joint. */
export const wireCrossings = ({ runs }: WiresSubject['layout']): readonly Over[] =>
  crossings(
    runs.flatMap(({ run, stretches }) =>
      stretches.map(({ line }, index) => ({ key: keyOf(run, index), line }))
    )
  );

/** Where a wire crosses another without a joint, it is drawn over it once more. */
export function overs(all: readonly Over[], conductors: readonly Drawn[]): readonly Drawn[] {
  const known = new Map(conductors.map((each) => [each.key, each]));
  return all.flatMap(({ of, key, line }) => {
    const conductor = known.get(of);
    return conductor ? [{ ...conductor, key, line, square: false, amps: 0 }] : [];
  });
}

/** Every rail in pieces between its loads: in each flows what the loads beyond it take. */
export const rails = ({ layout, reading, scene, marks }: RowsSubject): readonly Drawn[] =>
  layout.rows.flatMap(({ road, feedRail, returnRail }) => {
    const told = isTold(marks, road);
    const loads = vehiclesOn(scene, road)
      .map(([name, { atMm }]) => ({ x: layout.x(road, atMm), amps: told ? reading.amps(name) : 0 }))
      .sort((a, b) => a.x - b.x);
    const { west, east } = layout.rails;
    const marksX = [west, ...loads.map(({ x }) => x), east];
    const piece = (job: 'feed' | 'return', y: number, index: number): Drawn => {
      const beyond = (job === 'feed') !== layout.mirrored;
      const fed = beyond ? loads.slice(index) : loads.slice(0, index);
      const way = layout.mirrored ? -1 : 1;
      return {
        key: `${job} rail ${road} ${index}`,
        line: [
          { x: marksX[index] as number, y },
          { x: marksX[index + 1] as number, y }
        ],
        ink: told ? inkOf(reading.level(`${job} rail ${road}`)) : untold,
        amps: way * fed.reduce((sum, { amps }) => sum + amps, 0),
        width: 4,
        square: false
      };
    };
    return marksX
      .slice(1)
      .flatMap((_, index) => [
        piece('feed', feedRail.y, index),
        piece('return', returnRail.y, index)
      ]);
  });

/** Amps once in each leg, volts at a part-way rail, figures of meters and resistors. */
export function tags(subject: RowsSubject): readonly Tag[] {
  return [...flows(subject), ...drops(subject), ...parts(subject)];
}

/** Rails shorter than this have room for one figure beside the name of a loco below them, px. */
const TWO_TAGS = 190;

/** Of condensed rows each loco tells its amps beside its name. */
export const besideLoco = (
  { layout, reading, marks }: RowsSubject,
  road: string,
  name: string
): string | undefined => {
  if (!isCondensed(layout.rows.length)) return undefined;
  const amps = isTold(marks, road) ? reading.amps(name) : 0;
  return Math.abs(amps) < TOLD_AMPS ? '' : ampsText(amps);
};

const flows = ({ yard, layout, reading, scene, marks }: RowsSubject): readonly Tag[] =>
  layout.rows.flatMap(({ road, feedRail, label }) => {
    if (isCondensed(layout.rows.length)) return [];
    const loads = isTold(marks, road) ? vehiclesOn(scene, road) : [];
    const amps = loads.reduce((sum, [name]) => sum + reading.amps(name), 0);
    if (Math.abs(amps) < TOLD_AMPS) return [];
    const y = feedRail.y + 24;
    const text = ampsText(amps);
    const { west, east } = layout.rails;
    const [atWest, atEast] = layout.mirrored ? ['return', 'feed'] : ['feed', 'return'];
    const legs: readonly Tag[] = [
      { key: `${atWest} ${road}`, at: { x: west + 22, y }, text, anchor: 'start' },
      { key: `${atEast} ${road}`, at: { x: east - 4, y }, text, anchor: 'end' }
    ];
    const few = legs.filter(({ key }) => !hasMeter(layout, key));
    const isTaken = !label.toggled && yard.names[road] !== undefined;
    return isTaken || east - west < TWO_TAGS ? few.slice(-1) : few;
  });

/** A leg with a meter in it tells its amps there. */
const hasMeter = (layout: RowsLayout, id: string): boolean =>
  layout.runs.some(
    ({ run, glyphs }) => run.id === id && glyphs.some(({ kind }) => kind === 'meter')
  );

function drops({ yard, layout, reading, marks }: RowsSubject): readonly Tag[] {
  const atCentre = (road: string) =>
    Math.abs(reading.between(feedOf(yard, road), 'return') ?? 0) < CENTRE_VOLTS;
  return layout.rows
    .filter(({ road }) => isTold(marks, road) && !atCentre(road))
    .flatMap(({ road, feedRail, returnRail }) =>
      (
        [
          [`feed rail ${road}`, 100, feedRail.y + 24],
          [`return rail ${road}`, 24, returnRail.y - 12]
        ] as const
      )
        .filter(([node]) => isPartWay(reading.level(node)))
        .map(([node, east, y]): Tag => {
          const text = voltsText(reading.between(node, 'return') ?? 0);
          return { key: node, at: { x: layout.rails.west + east, y }, text, anchor: 'middle' };
        })
    );
}

const parts = ({ layout: { rows, runs, width }, reading, marks }: RowsSubject): readonly Tag[] =>
  runs.flatMap(({ run, glyphs }) =>
    glyphs.flatMap(({ id, kind, closed, middle, ohms, angle }): Tag[] => {
      const upright = Math.abs(angle) === 90;
      const inward = middle.x < width / 2 ? 1 : -1;
      const beside = upright
        ? {
            at: { x: middle.x + inward * 28, y: middle.y + 12 },
            anchor: inward > 0 ? ('start' as const) : ('end' as const)
          }
        : { at: { x: middle.x, y: middle.y + 36 }, anchor: 'middle' as const };
      if (kind === 'meter') {
        const told = isTold(marks, run.road) && !marks.untold.includes(id);
        const reads = told ? ampsText(reading.amps(id)) : '?';
        return [{ key: id, text: `${id.replace('meter ', '')} ${reads}`, ...beside }];
      }
      if (kind === 'toggle' && !isOwnSwitch(run, id)) {
        const name = `${id.replace('toggle ', '')} ${closed ? 'on' : 'off'}`;
        return [{ key: id, text: name, ...beside }];
      }
      if (kind === 'pin contact' && !isCondensed(rows.length)) {
        return [{ key: id, at: { x: middle.x, y: middle.y + 36 }, text: 'pin', anchor: 'middle' }];
      }
      if (kind !== 'resistor') return [];
      return [
        { key: id, at: { x: middle.x, y: middle.y + 34 }, text: `${ohms} Ω`, anchor: 'middle' }
      ];
    })
  );

/** What odd rows have to say under their rails, by road; nothing where the inks speak for themselves. */
export function captions(subject: RowsSubject): ReadonlyMap<string, string> {
  const figures = flows(subject);
  const flowing = new Set(figures.map(({ key }) => key.split(' ').at(-1)));
  return new Map(
    subject.layout.rows.map(({ road }) => [road, flowing.has(road) ? '' : caption(subject, road)])
  );
}

function caption({ layout, reading, marks }: RowsSubject, road: string): string {
  if (!isTold(marks, road)) return 'your call first';
  if (isClose(layout.rows.length) || !isWide(layout.width) || marks.trace.length > 0) return '';
  const odd = (['feed', 'return'] as const)
    .map((rail) => ({ rail, level: reading.level(`${rail} rail ${road}`) }))
    .find(({ level }) => level.joined === 'through' || level.joined === 'both');
  if (!odd) return '';
  const words = levelWords(odd.level);
  return odd.level.joined === 'both' ? words : `${odd.rail} rail ${words}`;
}

/** Inks of the two ends of a lamp that is fed from its road; undefined for one with a supply of its own. */
export function lampEnds({ yard, reading, marks }: RowsSubject, road: string) {
  if (yard.lamps !== 'track') return undefined;
  const run = reading.runs.find(({ id }) => id === `lamp feed ${road}`);
  const told = run !== undefined && isTold(marks, road);
  const ink = (node: string) => (told ? inkOf(reading.level(node)) : untold);
  return { feed: ink(run?.from ?? 'feed'), return: ink('return') };
}
