import type { Element } from '../circuit';
import {
  contacts,
  droppingOhms,
  guardDiode,
  ledIdeality,
  leds,
  nextAbove,
  saturationFrom
} from '../tables';
import type { Part, Placed, Run } from './runs';
import { controllers, feedOf } from './second';
import { switchedRoads, switchPlace } from './switching';
import { wirePart } from './wirePart';
import type { Yard } from './yard';

/** How a panel lamp looks. */
export type LampState = 'lit' | 'dim' | 'dark';

/** LED current from which a lamp is seen lit, and from which it is seen at all, A. Source: common practice. */
const LIT_AMPS = 2e-3;
const DIM_AMPS = 0.2e-3;

/** How an LED looks that carries `amps` from anode to cathode. */
export function lampState(amps: number): LampState {
  if (amps >= LIT_AMPS) return 'lit';
  return amps >= DIM_AMPS ? 'dim' : 'dark';
}

/** Names of the roads with a panel lamp. */
export const lampRoads = (yard: Yard): readonly string[] =>
  yard.lamps === 'none' ? [] : switchedRoads(yard);

/** Panel lamps are red LEDs that are meant to carry their table's current at full volts. */
const LED = leds.red;

/** The lamp's resistor: the first E12 value not below the one that lets the LED have its current, Ω. */
const lampOhms = (volts: number): number =>
  nextAbove(droppingOhms(volts, LED.volts, LED.testAmps), 'E12');

const BEHIND = 'behind ';

const resistor = (road: string, volts: number): Part => ({
  id: `lamp resistor ${road}`,
  kind: 'resistor',
  ohms: lampOhms(volts),
  closed: true
});

/** From where the lamp is fed, to its LED; the LED itself; the diode that guards it. */
function runsOf(yard: Yard, road: string): readonly Run[] {
  const own = yard.lamps === 'own';
  const home = own ? 'lamp -' : 'return';
  const inner = `lamp node ${road}`;
  const volts = own ? yard.lampSupply.volts : fullVolts(yard, road);
  const run = (id: string, from: string, to: string, parts: readonly Part[]): Run => ({
    id,
    from,
    to,
    job: 'lamp',
    road,
    parts
  });
  const part = (kind: 'lamp' | 'lamp guard'): Part => ({
    id: `${kind} ${road}`,
    kind,
    ohms: 0,
    closed: true
  });
  return [
    run(`lamp feed ${road}`, own ? 'lamp +' : `${BEHIND}${switchPlace(yard, road)}`, inner, [
      ...(own ? [pole(yard, road)] : []),
      wirePart(`lamp wire ${road}`, yard.wires.lamp),
      resistor(road, volts)
    ]),
    run(`lamp ${road}`, inner, home, [part('lamp')]),
    ...(own ? [] : [run(`lamp guard ${road}`, home, inner, [part('lamp guard')])])
  ];
}

const pole = (yard: Yard, road: string): Part => ({
  id: `lamp pole ${road}`,
  kind: 'lamp pole',
  ohms: contacts[yard.switching === 'rotary' ? 'rotary selector' : 'toggle'].ohms,
  closed: false
});

/** Volts of the road's controller at full knob. */
const fullVolts = (yard: Yard, road: string): number =>
  controllers(yard, { controller: 1, second: 1 }).find(({ feed }) => feed === feedOf(yard, road))
    ?.supply.volts ?? yard.supply.volts;

/**
 * The wiring of the panel lamps. `own`: a second pole of each toggle, or a second wafer of the
 * rotary, switches the lamp on a supply which is joined to nothing else. `track`: the lamp hangs
 * from behind the road's switch on the panel to the return; a plain diode the other way round keeps
 * the LED's reverse volts low. Source: Lessons in Electric Circuits III, Diodes.
 */
export const lampRuns = (yard: Yard): readonly Run[] =>
  lampRoads(yard).flatMap((road) => runsOf(yard, road));

/** The runs with each track-fed lamp joined to the far stud of its switch, wherever edits left that. */
export function hangLamps(runs: readonly Run[], placedOf: (run: Run) => readonly Placed[]) {
  if (!runs.some(({ from }) => from.startsWith(BEHIND))) return runs;
  const all = runs.flatMap(placedOf);
  return runs.map((run) =>
    run.from.startsWith(BEHIND)
      ? { ...run, from: all.find(({ id }) => `${BEHIND}${id}` === run.from)?.to ?? run.from }
      : run
  );
}

/** A lamp's LED or its guard as an element. */
export function lampElement({ id, kind, from, to }: Placed): Element {
  const { volts, testAmps } = kind === 'lamp' ? LED : guardDiode;
  return {
    kind: 'diode',
    id,
    a: from,
    b: to,
    saturation: saturationFrom(volts, testAmps),
    ideality: ledIdeality,
    ohms: 0
  };
}

/** Internal resistance, Ω, and limit, A, of a small regulated supply. Source: common practice. */
const REGULATED = { ohms: 0.1, limit: 1 };

/** The lamps' own supply: an island of its own. */
export const lampSupply = (yard: Yard): readonly Element[] =>
  yard.lamps === 'own' && lampRoads(yard).length > 0
    ? [
        {
          kind: 'source',
          id: 'lamp supply',
          a: 'lamp +',
          b: 'lamp -',
          volts: yard.lampSupply.volts,
          ...REGULATED
        }
      ]
    : [];
