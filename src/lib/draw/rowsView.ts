import { ampsText, CENTRE_VOLTS, levelWords, voltsText, type Reading, type Scene } from '../yard';
import type { Point, Polyline } from './geometry';
import { inkOf, isPartWay, untold, type Ink } from './ink';
import type { Marks } from './mark';
import { isOwnToggle, isWide, locoOn, type RowsLayout } from './rows';

/** What the rows view is made from. */
export interface RowsSubject {
  readonly layout: RowsLayout;
  readonly reading: Reading;
  readonly scene: Scene;
  readonly marks: Marks;
}

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

/** Least current that is told, A. */
const TOLD_AMPS = 0.002;

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

/** Every wire, with its ink and current. */
export const wires = ({ layout, reading, marks }: RowsSubject): readonly Drawn[] =>
  layout.runs.flatMap(({ run, stretches }) =>
    stretches.map(({ line, node, part }, index) => ({
      key: `${run.id} ${index}`,
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

/** Every rail in two pieces, west and east of its loco: current flows in one of them only. */
export const rails = ({ layout, reading, scene, marks }: RowsSubject): readonly Drawn[] =>
  layout.rows.flatMap(({ road, feedRail, returnRail }) => {
    const told = isTold(marks, road);
    const loco = locoOn(scene, road);
    const amps = loco && told ? reading.amps(loco) : 0;
    const middle = layout.x(loco ? (scene.locos[loco]?.atMm ?? 0) : 0);
    const piece = (job: 'feed' | 'return', y: number, west: boolean): Drawn => ({
      key: `${job} rail ${road} ${west}`,
      line: [
        { x: west ? layout.rails.west : middle, y },
        { x: west ? middle : layout.rails.east, y }
      ],
      ink: told ? inkOf(reading.level(`${job} rail ${road}`)) : untold,
      amps: west === (job === 'feed') ? amps : 0,
      width: 4,
      square: false
    });
    return [true, false].flatMap((west) => [
      piece('feed', feedRail.y, west),
      piece('return', returnRail.y, west)
    ]);
  });

/** Amps once in each leg, volts at a part-way rail, figures of meters and resistors. */
export function tags(subject: RowsSubject): readonly Tag[] {
  return [...flows(subject), ...drops(subject), ...parts(subject)];
}

const flows = ({ layout, reading, scene, marks }: RowsSubject): readonly Tag[] =>
  layout.rows.flatMap(({ road, feedRail }) => {
    const loco = locoOn(scene, road);
    const amps = loco && isTold(marks, road) ? reading.amps(loco) : 0;
    if (Math.abs(amps) < TOLD_AMPS) return [];
    const y = feedRail.y + 24;
    const text = ampsText(amps);
    const { west, east } = layout.rails;
    const legs: readonly Tag[] = [
      { key: `feed ${road}`, at: { x: west + 22, y }, text, anchor: 'start' },
      { key: `return ${road}`, at: { x: east - 4, y }, text, anchor: 'end' }
    ];
    return legs.filter(({ key }) => !hasMeter(layout, key));
  });

/** A leg with a meter in it tells its amps there. */
const hasMeter = (layout: RowsLayout, id: string): boolean =>
  layout.runs.some(
    ({ run, glyphs }) => run.id === id && glyphs.some(({ kind }) => kind === 'meter')
  );

function drops({ layout, reading, marks }: RowsSubject): readonly Tag[] {
  if (Math.abs(reading.between('feed', 'return') ?? 0) < CENTRE_VOLTS) return [];
  return layout.rows
    .filter(({ road }) => isTold(marks, road))
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

const parts = ({ layout, reading, marks }: RowsSubject): readonly Tag[] =>
  layout.runs.flatMap(({ run, glyphs }) =>
    glyphs.flatMap(({ id, kind, closed, middle, ohms, angle }): Tag[] => {
      const upright = Math.abs(angle) === 90;
      const aside = upright ? { x: 24, y: 5 } : { x: 0, y: 30 };
      const anchor = aside.x > 0 ? 'start' : 'middle';
      const at = { x: middle.x + aside.x, y: middle.y + aside.y };
      if (kind === 'meter') {
        const told = isTold(marks, run.road) && !marks.untold.includes(id);
        const reads = told ? ampsText(reading.amps(id)) : '?';
        return [{ key: id, at, text: `${id.replace('meter ', '')} ${reads}`, anchor }];
      }
      if (kind === 'toggle' && !isOwnToggle(run, id)) {
        const name = `${id.replace('toggle ', '')} ${closed ? 'on' : 'off'}`;
        return [
          {
            key: id,
            at: upright ? { x: middle.x - 22, y: middle.y + 5 } : at,
            text: name,
            anchor: upright ? 'end' : 'middle'
          }
        ];
      }
      if (kind !== 'resistor') return [];
      return [
        { key: id, at: { x: middle.x, y: middle.y + 34 }, text: `${ohms} Ω`, anchor: 'middle' }
      ];
    })
  );

/** What an odd row has to say under its rails; empty where the inks speak for themselves. */
export function caption({ layout, reading, marks }: RowsSubject, road: string): string {
  if (!isTold(marks, road)) return 'your call first';
  if (!isWide(layout.width) || marks.trace.length > 0) return '';
  const levels = [`feed rail ${road}`, `return rail ${road}`].map(reading.level);
  const odd = levels.find(({ joined }) => joined === 'through' || joined === 'both');
  return odd ? levelWords(odd) : '';
}
