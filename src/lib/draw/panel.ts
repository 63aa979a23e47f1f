import { roadsOf, toggleRoads, type Road, type Yard } from '../yard';
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

/** All that the panel view draws, px: the painted track diagram above, toggles and knob below. */
export interface PanelLayout {
  readonly width: number;
  readonly height: number;
  readonly screws: readonly Point[];
  readonly deck: Box;
  readonly roads: readonly PanelRoad[];
  /** Middle of each toggle, in road order. */
  readonly toggles: readonly (Point & { readonly road: string })[];
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
/** Room above the diagram, and for one line of toggles with their letters, px. */
const TITLE = 34;
const LINE = 96;
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
  const names = toggleRoads(yard);
  const room = wide - 2 * MARGIN - WORDS - KNOB;
  const each = Math.max(Math.floor(room / PITCH), 1);
  const lines = Math.max(Math.ceil(names.length / each), 1);
  const beds = roadsOf(yard).map(({ bed }) => bed);
  const most = Math.max(...beds.map((bed) => beds.filter((other) => other === bed).length));
  const rest = wide * PROPORTION - TITLE - lines * LINE;
  const step = Math.min(Math.max(rest / most, LEAST_STEP), MOST_STEP);
  const foot = TITLE + Math.max(step * most, rest);
  const height = foot + lines * LINE;
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
      x: start + (index % each) * pitch,
      y: y(Math.floor(index / each))
    })),
    words:
      names.length === 0
        ? []
        : Array.from({ length: lines }, (_, line) => ({ x: MARGIN, y: y(line) })),
    knob: { x: wide - MARGIN - KNOB / 2 + 6, y: y(lines - 1) },
    reach: pitch / 2
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

/** What lies under a pointer on the panel: a toggle, a painted road, or the knob. */
export function panelTarget(layout: PanelLayout, at: Point): string | undefined {
  const { toggles, roads, knob, reach } = layout;
  const toggle = toggles.find(
    ({ x, y }) => Math.abs(x - at.x) < reach && Math.abs(y - at.y) < LINE / 2
  );
  if (toggle) return `toggle ${toggle.road}`;
  if (Math.hypot(knob.x - at.x, knob.y - at.y) < KNOB / 2) return 'controller';
  const road = roads.find(
    ({ y, west, east }) => at.x > west && at.x < east && Math.abs(y - at.y) < LEAST_STEP / 2
  );
  return road && `road ${road.road}`;
}
