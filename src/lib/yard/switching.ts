import { contacts } from '../tables';
import { roadsOf, type Road } from './road';
import type { Part } from './runs';
import type { Scene } from './scene';
import type { Yard } from './yard';

/** What a road's switch is called, the contact it is made of, and how its two states are told. */
const kinds = {
  toggles: { part: 'toggle', contact: 'toggle', on: 'on', off: 'off' },
  rotary: { part: 'selector', contact: 'rotary selector', on: 'on', off: 'off' },
  pushes: { part: 'push', contact: 'push', on: 'held', off: 'let go' }
} as const;

/**
 * Positions of the one wafer that a rotary selector has, `off` among them.
 * Source: common practice (12 ways at 30°).
 */
const WAFER_POSITIONS = 12;

/** Most roads that a rotary selector can switch. */
export const MAX_ROTARY_ROADS = WAFER_POSITIONS - 1;

/** Whether a switch stands in the road's feed; a running road fed straight has none. */
const isSwitched = (yard: Yard, road: Road): boolean =>
  yard.switching !== 'none' && !(road.kind === 'running' && yard.runningRoad === 'direct');

/** Names of the roads with a switch in their feed: a toggle, a position of the rotary, or a push. */
export const switchedRoads = (yard: Yard): readonly string[] =>
  roadsOf(yard)
    .filter((road) => isSwitched(yard, road))
    .map(({ name }) => name);

/** Names of the roads with a toggle of their own. */
export const toggleRoads = (yard: Yard): readonly string[] =>
  yard.switching === 'toggles' ? switchedRoads(yard) : [];

/** Positions of the rotary selector in the order in which it turns, `off` first; none without one. */
export const selectorPositions = (yard: Yard): readonly string[] =>
  yard.switching === 'rotary' ? ['off', ...switchedRoads(yard)] : [];

/** Wherever the rotary selector can stand: its positions, and between two neighbours (`A-B`). */
export const selectorStands = (yard: Yard): readonly string[] =>
  selectorPositions(yard).flatMap((position, index, all) => {
    const next = all[index + 1];
    return next === undefined ? [position] : [position, `${position}-${next}`];
  });

/**
 * Whether the road's switch is made. Between two positions a make-before-break rotary makes both,
 * a break-before-make one neither. Source: what the two names mean (IEC 60050, "make before break").
 */
export function isOn(
  yard: Yard,
  scene: Pick<Scene, 'switches' | 'selector'>,
  road: string
): boolean {
  if (yard.switching !== 'rotary') return scene.switches[road] ?? false;
  const touched = scene.selector.split('-');
  return touched.includes(road) && (touched.length === 1 || yard.rotary === 'make before break');
}

/** The place of a road's switch: `toggle A`, `selector A`, `push A`; empty where it has none. */
export const switchPlace = (yard: Yard, road: string): string =>
  switchedRoads(yard).includes(road) && yard.switching !== 'none'
    ? `${kinds[yard.switching].part} ${road}`
    : '';

/** The road's switch as a part of its feed, open; none where it has none. */
export function switchPart(yard: Yard, road: Road): readonly Part[] {
  if (!isSwitched(yard, road) || yard.switching === 'none') return [];
  const { part, contact } = kinds[yard.switching];
  const { ohms } = contacts[contact];
  return [{ id: `${part} ${road.name}`, kind: part, ohms, closed: false }];
}

/** The state of a road's switch in a word: on or off, held or let go, or none. */
export function switchWord(
  yard: Yard,
  scene: Pick<Scene, 'switches' | 'selector'>,
  road: string
): string {
  if (yard.switching === 'none' || !switchedRoads(yard).includes(road)) return 'none';
  const { on, off } = kinds[yard.switching];
  return isOn(yard, scene, road) ? on : off;
}

/** Where the selector stands, in words: "off", "at A", "between A and B". */
export function selectorWords(stand: string): string {
  const [from, to] = stand.split('-');
  if (to !== undefined) return `between ${from} and ${to}`;
  return stand === 'off' ? 'off' : `at ${stand}`;
}

/** What a hand on a road's switch does: it throws the toggle, turns the selector there or off, holds or lets go. */
export function flip(
  yard: Yard,
  scene: Pick<Scene, 'switches' | 'selector'>,
  road: string
): { readonly switch: Record<string, boolean> } | { readonly selector: string } {
  const on = isOn(yard, scene, road);
  return yard.switching === 'rotary'
    ? { selector: on ? 'off' : road }
    : { switch: { [road]: !on } };
}
