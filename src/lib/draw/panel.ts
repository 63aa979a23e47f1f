import {
  roadsOf,
  selectorPositions,
  switchedRoads,
  switchPlace,
  type Road,
  type Yard
} from '../yard';
import type { Box, Point } from './geometry';
import { letterWidth } from './letters';

/** A road as it is painted on the panel: a line, and where its letter stands. */
interface PanelRoad {
  readonly road: string;
  readonly y: number;
  readonly west: number;
  readonly east: number;
  readonly letterX: number;
  /** The owner's name in the line's middle, as much of it as has room. */
  readonly title: { readonly x: number; readonly text: string };
}

/** The rotary selector: its middle, and each position with its letter and its lamp around it. */
interface PanelSelector extends Point {
  readonly positions: readonly {
    readonly position: string;
    /** Clockwise from straight up, degrees. */
    readonly turnDeg: number;
    readonly letter: Point;
    readonly lamp: Point;
  }[];
}

/** All that the panel view draws, px: the painted track diagram above, switches and knob below. */
export interface PanelLayout {
  readonly width: number;
  readonly height: number;
  readonly screws: readonly Point[];
  readonly deck: Box;
  readonly roads: readonly PanelRoad[];
  /** Middle of each toggle or push, in road order. */
  readonly toggles: readonly (Point & { readonly road: string; readonly place: string })[];
  readonly selector: PanelSelector | undefined;
  /** Where ON and OFF are painted, once a line of toggles. */
  readonly words: readonly Point[];
  readonly knob: Point;
  /** Half the width in which a toggle is hit. */
  readonly reach: number;
}

/** A face of 300 × 160 mm, as panels of this size often are. Source: common practice. */
const PROPORTION = 160 / 300;
const MOST_WIDTH = 640;
const MARGIN = 18;
/** Room above the diagram, for one line of toggles with their letters, and for a rotary selector, px. */
const TITLE = 34;
const LINE = 96;
const DIAL = 150;
/** From the selector's middle to its letters and to its lamps, px; the turn from position to position. */
const LETTERS = 40;
const LAMPS = 60;
const TURN_DEG = 30;
/** Least room from toggle to toggle; room for ON and OFF, and for the knob, px. */
const PITCH = 27;
const WORDS = 34;
const KNOB = 84;
/** Least and most room from road to road in the diagram, px. */
const LEAST_STEP = 15;
const MOST_STEP = 24;
/** Letters of lines close to each other stand one beside the other, px. */
const STAGGER = 22;

/** Lays out the panel's face in `width` px; it grows taller than its proportion when the yard has many roads. */
export function panelLayout(yard: Yard, width: number): PanelLayout {
  const wide = Math.min(width, MOST_WIDTH);
  const names = yard.switching === 'rotary' ? [] : switchedRoads(yard);
  const room = wide - 2 * MARGIN - WORDS - KNOB;
  const each = Math.max(Math.floor(room / PITCH), 1);
  const lines = Math.max(Math.ceil(names.length / each), 1);
  const beds = roadsOf(yard).map(({ bed }) => bed);
  const most = Math.max(...beds.map((bed) => beds.filter((other) => other === bed).length));
  const below = yard.switching === 'rotary' ? DIAL : lines * LINE;
  const rest = wide * PROPORTION - TITLE - below;
  const step = Math.min(Math.max(rest / most, LEAST_STEP), MOST_STEP);
  const foot = TITLE + Math.max(step * most, rest);
  const height = foot + below;
  const pitch = Math.min(room / Math.min(Math.max(names.length, 1), each), 64);
  const start = MARGIN + WORDS + pitch / 2;
  const y = (line: number) => foot + line * LINE + 54;
  const edge = 11;
  return {
    width: wide,
    height,
    screws: [edge, wide - edge].flatMap((x) => [edge, height - edge].map((at) => ({ x, y: at }))),
    ...diagram(yard, { wide, step, foot }),
    toggles: names.map((road, index) => ({
      road,
      place: switchPlace(yard, road),
      x: start + (index % each) * pitch,
      y: y(Math.floor(index / each))
    })),
    words:
      yard.switching !== 'toggles' || names.length === 0
        ? []
        : Array.from({ length: lines }, (_, line) => ({ x: MARGIN, y: y(line) })),
    selector: selectorOf(yard, { x: MARGIN + WORDS + room / 2, y: foot + DIAL / 2 }),
    knob: { x: wide - MARGIN - KNOB / 2 + 6, y: height - LINE + 54 },
    reach: pitch / 2
  };
}

/** The rotary selector with its positions around it, the middle one straight up; none without one. */
function selectorOf(yard: Yard, middle: Point): PanelSelector | undefined {
  const positions = selectorPositions(yard);
  if (positions.length === 0) return undefined;
  return {
    ...middle,
    positions: positions.map((position, index) => {
      const turnDeg = (index - (positions.length - 1) / 2) * TURN_DEG;
      const turn = (turnDeg * Math.PI) / 180;
      const at = (radius: number): Point => ({
        x: middle.x + radius * Math.sin(turn),
        y: middle.y - radius * Math.cos(turn)
      });
      return { position, turnDeg, letter: at(LETTERS), lamp: at(LAMPS) };
    })
  };
}

interface Ground {
  readonly wide: number;
  readonly step: number;
  readonly foot: number;
}

/** The painted lines, north to south: the fixed roads to the deck's middle, the deck's roads. */
function diagram(yard: Yard, { wide, step, foot }: Ground): Pick<PanelLayout, 'deck' | 'roads'> {
  const all = roadsOf(yard);
  const on = (bed: 'west' | 'deck' | 'east') =>
    all.filter((road) => road.bed === bed).toSorted((a, b) => a.southMm - b.southMm);
  const [from, to] = [MARGIN + 8, wide - MARGIN - 8];
  const west = on('west').length > 0 ? from + (to - from) * 0.22 : from;
  const east = on('east').length > 0 ? to - (to - from) * 0.22 : to;
  const tall = step * on('deck').length;
  const top = TITLE + Math.max((foot - TITLE - tall) / 2, 0);
  const ends = {
    west: [from, west - 6],
    deck: [west + 8, east - 8],
    east: [east + 6, to]
  } as const;
  const roads = (['west', 'deck', 'east'] as const).flatMap((bed) => {
    const list = on(bed);
    const first = top + tall / 2 - ((list.length - 1) * step) / 2;
    return list.map(({ name }, index) => {
      const [x1, x2] = ends[bed];
      const letterX =
        (bed === 'east' ? x2 - 14 : x1 + 14) +
        (bed === 'east' ? -(index % 2) : index % (bed === 'deck' ? 4 : 2)) * STAGGER;
      const title = titleIn(yard.names[name] ?? '', bed, [x1, x2]);
      return { road: name, y: first + index * step, west: x1, east: x2, letterX, title };
    });
  });
  return { deck: { x: west, y: top - 2, width: east - west, height: tall + 4 }, roads };
}

/** A name painted clear of all places where letters stand, cut where the line is short. */
function titleIn(name: string, bed: Road['bed'], [from, to]: readonly [number, number]) {
  const letters = 28 + { west: 0, deck: 3, east: 1 }[bed] * STAGGER;
  const [west, east] = bed === 'east' ? [from, to - letters] : [from + letters, to];
  const most = Math.max(Math.floor((east - west) / letterWidth(14)), 0);
  const all = [...name];
  const text = all.length <= most ? name : most < 3 ? '' : `${all.slice(0, most - 1).join('')}…`;
  return { x: (west + east) / 2, text };
}

/** What lies under a pointer on the panel: a switch, a painted road, or the knob. */
export function panelTarget(layout: PanelLayout, at: Point): string | undefined {
  const { toggles, selector, roads, knob, reach } = layout;
  const toggle = toggles.find(
    ({ x, y }) => Math.abs(x - at.x) < reach && Math.abs(y - at.y) < LINE / 2
  );
  if (toggle) return toggle.place;
  const turned = selector?.positions.find(
    ({ letter }) => Math.hypot(letter.x - at.x, letter.y - at.y) < LETTERS / 4
  );
  if (turned && turned.position !== 'off') return `selector ${turned.position}`;
  if (Math.hypot(knob.x - at.x, knob.y - at.y) < KNOB / 2) return 'controller';
  const road = roads.find(
    ({ y, west, east }) => at.x > west && at.x < east && Math.abs(y - at.y) < LEAST_STEP / 2
  );
  return road && `road ${road.road}`;
}
