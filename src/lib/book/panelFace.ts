import { panelParts, panelRoom, type PanelPart, type PanelPartKind } from '../tables';
import {
  lampRoads,
  roadsOf,
  roadTitle,
  selectorPositions,
  switchedRoads,
  switchPlace,
  type Road,
  type Yard
} from '../yard';

/** A hole of the panel: its number, what sits in it, its middle in mm from the west and the top edge. */
export interface Hole extends PanelPart {
  readonly number: number;
  readonly place: string;
  readonly kind: PanelPartKind;
  readonly x: number;
  readonly y: number;
}

/** Words painted on the panel, mm; `x` is their middle, or their start. */
export interface PanelText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly anchor: 'start' | 'middle';
}

/** A road painted on the panel, mm. */
interface PaintedRoad {
  readonly road: string;
  readonly west: number;
  readonly east: number;
  readonly y: number;
}

/** The face of the panel at full size, mm from its west and top edge. */
export interface PanelFace {
  readonly width: number;
  readonly height: number;
  readonly deck: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly roads: readonly PaintedRoad[];
  readonly texts: readonly PanelText[];
  readonly holes: readonly Hole[];
}

type Spot = Pick<Hole, 'place' | 'kind' | 'x' | 'y'>;

/** Room above the track diagram, and from road to road in it. */
const TITLE = 20;
const STEP = 8;
/** Least height of the diagram. */
const LEAST = 32;
/** Room for the words ON and OFF. */
const WORDS = 14;
/** Most switches in a line, and the fewest that the face is made wide for. */
const MOST = 11;
const FEWEST = 5;
/** Height of a line of switches without lamps, and of the space under the last. */
const LINE = 34;
const UNDER = 10;
/** A screw's middle, from both edges. */
const CORNER = 8;
/** From the rotary's middle to its letters and to its lamps, and the turn from position to position. */
const LETTERS = 24;
const LAMPS = 34;
const TURN_DEG = 30;
/** Width of a letter for its height, on the wide side: a printer may take another typeface. Source: common practice. */
const LETTER = 0.6;

const round = (mm: number): number => Math.round(mm * 10) / 10;
const upTo10 = (mm: number): number => Math.ceil(mm / 10) * 10;

/** Switches in one line, so that no line is much shorter than the others. */
function perLine(count: number): number {
  const lines = Math.max(Math.ceil(count / MOST), 1);
  return Math.max(Math.ceil(count / lines), FEWEST);
}

/** The painted roads, north to south on each bed, and the deck's outline. */
function diagram(yard: Yard, width: number) {
  const on = (bed: Road['bed']) =>
    roadsOf(yard)
      .filter((road) => road.bed === bed)
      .toSorted((a, b) => a.southMm - b.southMm);
  const [from, to] = [panelRoom.frameMm, width - panelRoom.frameMm];
  const fixed = round((to - from) * 0.22);
  const west = on('west').length > 0 ? from + fixed : from;
  const east = on('east').length > 0 ? to - fixed : to;
  const most = Math.max(...(['west', 'deck', 'east'] as const).map((bed) => on(bed).length));
  const height = Math.max(most * STEP, LEAST);
  const ends = {
    west: [from, west - 2],
    deck: [west + 2, east - 2],
    east: [east + 2, to]
  } as const;
  const roads = (['west', 'deck', 'east'] as const).flatMap((bed) => {
    const list = on(bed);
    const first = TITLE + height / 2 - ((list.length - 1) * STEP) / 2;
    const [start, end] = ends[bed];
    return list.map(({ name }, index): PaintedRoad => ({
      road: name,
      west: start,
      east: end,
      y: first + index * STEP
    }));
  });
  const tall = on('deck').length * STEP;
  const deck = { x: west, y: TITLE + (height - tall) / 2, width: east - west, height: tall };
  return { roads, deck, foot: TITLE + height };
}

const ROAD_SIZE = 4;

/** A road's letter with its name, cut where its line is short. */
function roadText(yard: Yard, { road, west, east, y }: PaintedRoad): PanelText {
  const most = Math.floor((east - west - 6) / (ROAD_SIZE * LETTER));
  const all = [...roadTitle(yard, road)];
  const text = all.length <= most ? all.join('') : `${all.slice(0, most - 1).join('')}…`;
  return { text, x: west + 4, y: y + 1.4, size: ROAD_SIZE, anchor: 'start' };
}

/** Holes and painted words that belong together, and how far down they reach. */
interface Group {
  readonly spots: readonly Spot[];
  readonly texts: readonly PanelText[];
  readonly foot: number;
}

/** Toggles or pushes in lines, each with its lamp and its letter above. */
function inLines(yard: Yard, top: number): Group {
  const names = switchedRoads(yard);
  const lamps = new Set(lampRoads(yard));
  const kind = yard.switching === 'pushes' ? 'push' : 'toggle';
  const each = perLine(names.length);
  const above = lamps.size > 0 ? panelRoom.lampMm : 0;
  const middle = (index: number) => ({
    x: panelRoom.frameMm + WORDS + (0.5 + (index % each)) * panelRoom.pitchMm,
    y: top + 20 + above + Math.floor(index / each) * (LINE + above)
  });
  const lines = Math.ceil(names.length / each);
  const words = Array.from({ length: kind === 'toggle' ? lines : 0 }, (_, line) => {
    const { y } = middle(line * each);
    const word = (text: string, down: number): PanelText => ({
      text,
      x: panelRoom.frameMm,
      y: y + down,
      size: 4,
      anchor: 'start'
    });
    return [word('ON', -5), word('OFF', 8)];
  });
  return {
    spots: names.flatMap((road, index): readonly Spot[] => {
      const { x, y } = middle(index);
      const lamp: Spot = { place: `lamp ${road}`, kind: 'lamp', x, y: y - panelRoom.lampMm };
      return [{ place: switchPlace(yard, road), kind, x, y }, ...(lamps.has(road) ? [lamp] : [])];
    }),
    texts: [
      ...words.flat(),
      ...names.map((road, index): PanelText => {
        const { x, y } = middle(index);
        return { text: road, x, y: y - above - (above > 0 ? 6 : 11), size: 5, anchor: 'middle' };
      })
    ],
    foot: lines === 0 ? top : middle(names.length - 1).y + 8 + UNDER
  };
}

/** One rotary with its positions around it, and a lamp outside each. */
function rotary(yard: Yard, top: number, x: number): Group {
  const positions = selectorPositions(yard);
  const lamps = new Set(lampRoads(yard));
  const y = top + LAMPS + 8;
  const at = (index: number, radius: number) => {
    const turn = ((index - (positions.length - 1) / 2) * TURN_DEG * Math.PI) / 180;
    return { x: round(x + radius * Math.sin(turn)), y: round(y - radius * Math.cos(turn)) };
  };
  return {
    spots: [
      { place: 'rotary selector', kind: 'rotary', x, y },
      ...positions.flatMap((road, index): readonly Spot[] =>
        lamps.has(road) ? [{ place: `lamp ${road}`, kind: 'lamp', ...at(index, LAMPS) }] : []
      )
    ],
    texts: positions.map((text, index): PanelText => {
      const spot = at(index, LETTERS);
      return { text, x: spot.x, y: round(spot.y + 1.6), size: 4.5, anchor: 'middle' };
    }),
    foot: y + LAMPS + 6 + UNDER
  };
}

/**
 * The panel's face at full size: the track diagram above, switches and lamps below. The controller
 * stays in its own case.
 */
export function panelFace(yard: Yard): PanelFace {
  const count = yard.switching === 'rotary' ? 0 : switchedRoads(yard).length;
  const width = upTo10(WORDS + perLine(count) * panelRoom.pitchMm + 2 * panelRoom.frameMm);
  const { roads, deck, foot } = diagram(yard, width);
  const group = yard.switching === 'rotary' ? rotary(yard, foot, width / 2) : inLines(yard, foot);
  const height = upTo10(Math.max(group.foot, foot + UNDER));
  const screws = [CORNER, height - CORNER].flatMap((y) =>
    [CORNER, width - CORNER].map((x) => ({ x, y }))
  );
  const spots: readonly Spot[] = [
    ...group.spots,
    ...screws.map((at, index): Spot => ({ place: `screw ${index + 1}`, kind: 'screw', ...at }))
  ];
  return {
    width,
    height,
    deck,
    roads,
    texts: [...roads.map((road) => roadText(yard, road)), ...group.texts],
    holes: spots.map((spot, index) => ({ number: index + 1, ...panelParts[spot.kind], ...spot }))
  };
}
