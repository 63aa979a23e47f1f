import {
  ampsText,
  isProbe,
  meterVoltsText,
  placed,
  shown,
  type Placed,
  type Reading
} from '../yard';
import type { View } from './session.svelte';

const size = (volts: number): string => meterVoltsText(Math.abs(volts));
const opening = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
const NOT_YET = 'your call first';

/** What stands at a place that is pointed at, in one line: "Toggle B: open, 12.0 V across, 0.00 A." */
export function readout(view: View, untold: readonly string[], place: string): string {
  const [, road] = /^road (.+)$/.exec(place) ?? [];
  const words =
    road !== undefined ? roadWords(view, untold, road) : placeWords(view, untold, place);
  return words === '' ? '' : `${opening(words)}.`;
}

function roadWords({ scene, reading }: View, untold: readonly string[], road: string): string {
  if (untold.includes(road)) return `road ${road}: ${NOT_YET}`;
  const volts = reading.between(`feed rail ${road}`, `return rail ${road}`);
  const loco = Object.entries(scene.locos).find(([, at]) => at.road === road && !at.fallen)?.[0];
  const amps = ampsText(loco ? reading.amps(loco) : 0);
  return volts === undefined
    ? `road ${road}: a rail is joined to nothing, ${amps}`
    : `road ${road}: ${size(volts)} between its rails, ${amps}`;
}

function placeWords(view: View, untold: readonly string[], place: string): string {
  const { scene, reading } = view;
  const standing = scene.locos[place];
  if (standing) return locoWords(view, untold, place);
  if (place === 'pin') return `pin: ${scene.pin}`;
  if (isProbe(place)) return instrumentWords(reading, untold, place);
  if (place === 'controller') {
    const amps = untold.length > 0 ? '' : `, ${ampsText(reading.amps(place))}`;
    return `controller: ${size(reading.between('feed', 'return') ?? 0)}${amps}`;
  }
  const run = reading.runs.find(({ parts }) => parts.some(({ id }) => id === place));
  if (!run) return '';
  const part = placed(run).find(({ id }) => id === place) as Placed;
  const road = run.road ?? /^metal on (?:rails of|toggle) (.+)$/.exec(place)?.[1];
  const hidden =
    untold.includes(place) || (road === undefined ? untold.length > 0 : untold.includes(road));
  return `${place}: ${hidden ? NOT_YET : partWords(reading, part)}`;
}

function locoWords({ scene, reading }: View, untold: readonly string[], loco: string): string {
  const road = scene.locos[loco]?.road as string;
  const where = `${loco} on road ${road}`;
  if (untold.includes(road)) return `${where}: ${NOT_YET}`;
  if (scene.locos[loco]?.fallen) return `${loco}: in the gap`;
  return `${where}: ${size(reading.volts(loco) ?? 0)} across, ${ampsText(reading.amps(loco))}`;
}

function instrumentWords(reading: Reading, untold: readonly string[], id: string): string {
  const what = shown(reading).find((each) => each.id === id);
  if (!what) return '';
  return `${what.name}: ${untold.includes(id) ? NOT_YET : `${what.value} ${what.where}`}`;
}

function partWords(reading: Reading, { id, kind, closed }: Placed): string {
  const volts = reading.volts(id);
  const across =
    volts === undefined
      ? 'one side joined to nothing'
      : `${size(volts)} ${kind === 'wire' ? 'along it' : 'across'}`;
  const state =
    kind === 'wire' ? (closed ? [] : ['off']) : hasState(kind) ? [closed ? 'closed' : 'open'] : [];
  return [...state, across, ampsText(reading.amps(id))].join(', ');
}

const hasState = (kind: Placed['kind']): boolean =>
  kind === 'toggle' || kind === 'plug' || kind === 'pin contact';
