import { scales } from '../tables';
import { holes, roadsOf, travel, wholeRoads, type Road, type Yard } from '../yard';
import type { Box } from './geometry';

/** One road seen from above, px. */
export interface PlanRoad {
  readonly road: string;
  readonly y: number;
  readonly west: number;
  readonly east: number;
  /** Where its letter can stand: the first is the usual place. */
  readonly letterXs: readonly number[];
  /** Where mm along it is drawn. */
  readonly x: (mm: number) => number;
}

/** All that the plan draws, px; across the deck it is to scale. */
export interface PlanLayout {
  readonly width: number;
  readonly height: number;
  /** px per mm along, and across. */
  readonly along: number;
  readonly across: number;
  /** From a road's middle line to a rail, and a loco over its steps, px. */
  readonly halfGauge: number;
  readonly locoWidth: number;
  readonly deck: Box;
  /** Where there is no track when the deck is elsewhere. */
  readonly well: Box;
  /** Holes of the locating plate, and the pin's height on the deck. */
  readonly plate: readonly { readonly name: string; readonly x: number; readonly y: number }[];
  readonly pinY: number;
  /** Openings in the barriers, where fixed roads meet the well. */
  readonly openings: readonly (Box & { readonly end: 'west' | 'east' })[];
  readonly roads: readonly PlanRoad[];
}

/** Width of a loco over its steps, in gauges. Source: common practice. */
const LOCO_GAUGES = 2.06;
const MARGIN = 16;
/** Room beyond the end of a fixed road, for its letter, px: a loco covers a short road. */
const LETTER_ROOM = 34;
/** Half the width of the ring round a road's letter, px. */
export const letterHalf = (name: string): number => (name.length > 1 ? 14 : 10);
/** From the outer roads to the deck's edge, mm. */
const EDGE_MM = 54;
/** More of it south of the last road, where the pin is. */
const PIN_MM = 46;
/** From the deck to the well's edge, px. */
const WELL = 10;
/** A deck of more roads than this is drawn closer. */
const MANY = 12;
/** From road to road: at least, and where letters have room one above the other, px. */
const LEAST_PITCH = 11;
const LETTER_PITCH = 20;
/** Letters that have no such room stand by turns so much further in, px. */
const STAGGER = 24;
/** So much of a running road is drawn, mm; the rest is the layout. */
const RUNNING_SHOWN_MM = 330;
/** So far it is drawn past stabling roads beside it: its letter stands there. */
const PAST_MM = 190;
/** And so much of its outer section, where it is cut. */
const OUTER_SHOWN_MM = 550;

/** So much of a fixed road is drawn, mm: of a cut running road all sections, the outer one in part. */
function shownMm({ name, kind, bed, lengthMm }: Road, all: readonly Road[]): number {
  if (kind !== 'running') return lengthMm;
  const sections = all.filter(({ whole }) => whole === name);
  const outer = sections.at(bed === 'west' ? 0 : -1);
  const cut = outer && outer.name !== name ? lengthMm - outer.lengthMm + OUTER_SHOWN_MM : 0;
  const beside = all.filter((road) => road.bed === bed && road.kind === 'stabling');
  const past = beside.map((road) => road.startMm + road.lengthMm + PAST_MM);
  return Math.min(Math.max(cut || RUNNING_SHOWN_MM, ...past), lengthMm);
}

/**
 * Least px per mm across: so much from road to road as is usual in the scale, less with many roads, but
 * room for letters that stand by turns.
 */
function acrossFor({ deckRoads, centresMm, scale }: Yard, fixed: boolean): number {
  const pitch = deckRoads > MANY ? 18 : fixed ? 20.4 : 27.6;
  return Math.max(LEAST_PITCH / centresMm, pitch / scales[scale].centresMm);
}

/** Lays out the plan in `width` px, with the deck at `deckMm`. */
export function planLayout(yard: Yard, deckMm: number, width: number): PlanLayout {
  const all = roadsOf(yard);
  const wholes = wholeRoads(yard);
  const { gaugeMm } = scales[yard.scale];
  const on = (bed: Road['bed']) => wholes.filter((road) => road.bed === bed);
  const longest = (end: 'west' | 'east') =>
    Math.max(0, ...on(end).map((road) => shownMm(road, all)));
  const shown = { west: longest('west'), east: longest('east') };
  const fixed = shown.west + shown.east > 0;
  const margin = {
    west: shown.west > 0 ? LETTER_ROOM : MARGIN,
    east: shown.east > 0 ? LETTER_ROOM : MARGIN
  };
  const along =
    (width - margin.west - margin.east - 2 * WELL) / (yard.roadLengthMm + shown.west + shown.east);
  const across = Math.max(along, acrossFor(yard, fixed));
  const reach = fixed ? -travel(yard).least : 0;
  const last = Math.max(...on('deck').map(({ southMm }) => southMm));
  const pinMm = fixed ? PIN_MM : 0;
  const top = 8;
  /** Height of a place south of the line of the running road Q. */
  const y = (mm: number) => top + WELL + (reach + EDGE_MM + mm) * across;
  const deckX = margin.west + WELL + shown.west * along;
  const deck = {
    x: deckX,
    y: y(deckMm - EDGE_MM),
    width: yard.roadLengthMm * along,
    height: (last + 2 * EDGE_MM + pinMm) * across
  };
  const well = {
    x: deckX - WELL,
    y: top,
    width: deck.width + 2 * WELL,
    height: (reach + last + 2 * EDGE_MM + pinMm) * across + 2 * WELL
  };
  /** The pin's height with the deck at `at`. */
  const pinY = (at: number) => y(at + last + EDGE_MM + pinMm) - 10;
  const close = yard.centresMm * across < LETTER_PITCH;
  const place = (road: Road): PlanRoad => {
    const wholeMm = wholes.find(({ name }) => name === road.whole)?.lengthMm ?? road.lengthMm;
    const beside = all.filter(({ bed }) => bed === road.bed).map(({ southMm }) => southMm);
    const turn = [...new Set(beside)].indexOf(road.southMm) % 2;
    const inward = close ? STAGGER * turn : 0;
    return planRoad(
      { ...road, wholeMm },
      { west: margin.west, east: width - margin.east, deck, along, y, deckMm, inward }
    );
  };
  return {
    width,
    height: well.y + well.height + 8,
    along,
    across,
    halfGauge: (gaugeMm / 2) * across,
    locoWidth: LOCO_GAUGES * gaugeMm * across,
    deck,
    well,
    pinY: pinY(deckMm),
    plate: holes(yard).map(({ name, deckMm: at }) => ({
      name,
      x: well.x + well.width - 5,
      y: pinY(at)
    })),
    openings: wholes.flatMap(({ bed, southMm }) =>
      bed === 'deck' ? [] : [opening(well, { bed, y: y(southMm), size: yard.openingMm * across })]
    ),
    roads: all.map(place)
  };
}

function opening(
  well: Box,
  { bed, y, size }: { readonly bed: 'west' | 'east'; readonly y: number; readonly size: number }
) {
  const x = bed === 'west' ? well.x - 2 : well.x + well.width - 2;
  return { end: bed, x, y: y - size / 2, width: 4, height: size };
}

interface Ground {
  /** Between these a road is drawn, px. */
  readonly west: number;
  readonly east: number;
  readonly deck: Box;
  readonly along: number;
  readonly y: (mm: number) => number;
  readonly deckMm: number;
  /** How much further in the letter stands. */
  readonly inward: number;
}

function planRoad(
  { name, bed, southMm, lengthMm, startMm, wholeMm }: Road & { readonly wholeMm: number },
  { west: least, east: most, deck, along, y, deckMm, inward }: Ground
): PlanRoad {
  const end = deck.x + deck.width;
  const begin = { west: deck.x - WELL - wholeMm * along, deck: deck.x, east: end + WELL }[bed];
  const start = begin + startMm * along;
  const east = Math.min(start + lengthMm * along, most);
  const west = Math.max(start, least);
  const half = letterHalf(name);
  const isLast = startMm + lengthMm === wholeMm;
  const letterXs = {
    deck: [west + 16 + inward, east - 16 - inward],
    west: [
      start <= least || startMm === 0 ? west - half - 2 + inward : west + 16 + inward,
      east - 16 - inward
    ],
    east: [isLast ? east + half + 2 - inward : east - half - inward, west + half + inward]
  }[bed];
  return {
    road: name,
    y: y(bed === 'deck' ? southMm + deckMm : southMm),
    west,
    east,
    letterXs,
    x: (mm) => start + mm * along
  };
}
