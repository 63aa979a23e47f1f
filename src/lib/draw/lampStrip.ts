import { namesOf, wiresOf } from '../book';
import { lampRoads, wireColours, type Yard } from '../yard';
import { dot, path, PX, round, symbol, text } from './circuitStrip';
import type { Spanned, Strip } from './strips';
import { strokesOf, type Stroke } from './symbol';

/** First column, and from column to column without and with a guard diode, mm. */
const FIRST = 40;
const COLUMN = { own: 26, track: 35 } as const;
/** Heights, mm: the feed, second pole, resistor, LED, and the return. */
const y = { feed: 10, pole: 22, resistor: 38, lamp: 52, home: 66 } as const;
/** A guard diode stands beside its LED. */
const BESIDE = 9;

/** A diode along its wire, px, its bar where the arrow points; an LED has two arrows more. Source: IEC 60617, from memory. */
const diode: readonly Stroke[] = [
  { d: 'M-12 0H12', role: 'line' },
  { d: 'M-10 -9V9L8 0Z', role: 'body' },
  { d: 'M8 -9V9', role: 'line' }
];
const led: readonly Stroke[] = [
  ...diode,
  { d: 'M-4 -12L4 -22M4 -22l-5 2M4 -22l0 5', role: 'line' },
  { d: 'M6 -12L14 -22M14 -22l-5 2M14 -22l0 5', role: 'line' }
];

interface Subject {
  readonly yard: Yard;
  readonly names: ReadonlyMap<string, string>;
  /** Numbers of the wires of a run, in the order in which one follows it. */
  readonly numbers: (run: string) => readonly number[];
}

const number = (x: number, at: number, value: number | undefined): readonly Spanned[] =>
  value === undefined ? [] : [text({ x: x + 1.2, y: at + 0.8 }, String(value), { size: 2.4 })];

/** One lamp's current path: its pole or the switch it hangs from, its resistor, its LED, its guard. */
function column({ yard, names, numbers }: Subject, road: string, x: number): readonly Spanned[] {
  const own = yard.lamps === 'own';
  const name = (place: string) => names.get(place) ?? '';
  const down = (from: number, to: number, at = x) =>
    path([
      { x: at, y: from },
      { x: at, y: to }
    ]);
  const out = numbers(`lamp feed ${road}`);
  const [first, second, third] = own ? out : [undefined, ...out];
  const [, home] = [0, ...numbers(`lamp ${road}`)];
  const guard = numbers(`lamp guard ${road}`);
  const switched = names.get(`toggle ${road}`) ?? names.get(`selector ${road}`) ?? '';
  const half = 24 * PX;
  return [
    ...(own
      ? [
          dot({ x, y: y.feed }),
          down(y.feed, y.pole - half),
          symbol(strokesOf({ kind: 'toggle', width: 48, closed: false }), { x, y: y.pole }, -90),
          text({ x: x + 2.4, y: y.pole + 1.2 }, switched)
        ]
      : [text({ x, y: y.pole + half - 3 }, `behind ${switched}`, { size: 2.8, anchor: 'middle' })]),
    down(y.pole + half, y.lamp),
    symbol(strokesOf({ kind: 'resistor', width: 40, closed: true }), { x, y: y.resistor }, -90),
    text({ x: x + 2.6, y: y.resistor + 1.2 }, name(`lamp resistor ${road}`)),
    down(y.lamp, y.home),
    symbol(led, { x, y: y.lamp }, 90),
    text({ x: x - 3.4, y: y.lamp + 1.2 }, name(`lamp ${road}`), { anchor: 'end' }),
    dot({ x, y: y.home }),
    ...(guard.length > 0
      ? [
          path([
            { x, y: y.lamp - 5 },
            { x: x + BESIDE, y: y.lamp - 5 },
            { x: x + BESIDE, y: y.home }
          ]),
          dot({ x, y: y.lamp - 5 }),
          symbol(diode, { x: x + BESIDE, y: y.lamp }, -90),
          text({ x: x + BESIDE + 2.6, y: y.lamp + 1.2 }, name(`lamp guard ${road}`)),
          dot({ x: x + BESIDE, y: y.home }),
          ...number(x + BESIDE, y.lamp - 3.4, guard[1]),
          ...number(x + BESIDE, y.home - 5, guard[0])
        ]
      : []),
    ...number(x, y.feed + 3.5, first),
    ...number(x, (y.pole + y.resistor) / 2, second),
    ...number(x, y.resistor + 6.6, third),
    ...number(x, y.home - 5, home),
    text({ x, y: y.home + 5 }, road, { anchor: 'middle', bold: true })
  ];
}

/** The circuit of the panel lamps; none where a yard has no lamps. */
export function lampStrips(yard: Yard): readonly Strip[] {
  const roads = lampRoads(yard);
  if (roads.length === 0) return [];
  const schedule = wiresOf(yard);
  const names = namesOf(yard);
  const numbers = (run: string) =>
    schedule.filter((wire) => wire.run === run).map((wire) => wire.number);
  const own = yard.lamps === 'own';
  const code = (leg: 'lampFeed' | 'lampReturn') =>
    wireColours(yard).find(({ wire }) => wire === leg)?.code ?? '';
  const pitch = COLUMN[own ? 'own' : 'track'];
  const at = (index: number) => FIRST + index * pitch;
  const east = at(roads.length - 1) + (own ? 0 : BESIDE);
  const supply = { x: 12, y: (y.feed + y.home) / 2 };
  const heights = own ? [y.feed, y.home] : [y.home];
  const lineText = own ? { [y.feed]: 'lamp +', [y.home]: 'lamp −' } : { [y.home]: 'return' };
  return [
    {
      id: 'lamps',
      title: 'Circuit of the panel lamps',
      width: east + 14,
      height: y.home + 9,
      cuts: roads.map((_, index) => at(index) + pitch - (own ? 13 : 14)),
      crossing: () => heights.map((height) => ({ y: height, text: lineText[height] ?? '' })),
      shapes: [
        ...heights.map((height) =>
          path([
            { x: supply.x, y: height },
            { x: east, y: height }
          ])
        ),
        ...(own
          ? [
              path([
                { x: supply.x, y: y.feed },
                { x: supply.x, y: y.home }
              ]),
              ...round(supply, 'G', 5),
              text({ x: supply.x + 6.2, y: supply.y + 1.2 }, names.get('lamp supply') ?? ''),
              text({ x: supply.x, y: y.feed - 2 }, `lamp + ${code('lampFeed')}`),
              text({ x: supply.x, y: y.home + 5 }, `lamp − ${code('lampReturn')}`)
            ]
          : [text({ x: supply.x, y: y.home + 5 }, 'return')]),
        ...roads.flatMap((road, index) => column({ yard, names, numbers }, road, at(index)))
      ]
    }
  ];
}
