import type { Element } from '../circuit';
import { contacts } from '../tables';
import { lineOf, type Line } from './line';
import { locoIn, motorConstant } from './locos';
import type { Scene } from './scene';
import type { Standing } from './standing';
import { stockNamed, vehicleIn } from './vehicles';
import type { Yard } from './yard';

/** A single wheel bridges a gap while it stands no farther from it, mm. Source: common practice. */
const BRIDGE_MM = 1.5;

/**
 * The roads whose rails the wheels of a vehicle join: all on which the pick-ups of a loco or a lit
 * coach stand; of plain wheels the two beside a gap, while one stands on it.
 */
export function touches({ yard, roads }: Line, name: string, at: Standing): readonly string[] {
  if (at.fallen) return [];
  const half = vehicleIn(yard, name).wheelSpanMm / 2;
  const { lengthMm = 0 } = roads.find((each) => each.name === at.road) ?? {};
  const plain = stockNamed(name)?.wheels.kind === 'plain';
  const clear = plain ? half + BRIDGE_MM : half;
  if (at.atMm - clear >= 0 && at.atMm + clear <= lengthMm) return plain ? [] : [at.road];
  if (!plain) {
    const [west, east] = [at.atMm - half, at.atMm + half];
    return roads
      .filter((each) => each.westMm < east && each.westMm + each.lengthMm > west)
      .map((each) => each.name);
  }
  const bridges = (gapMm: number) =>
    [-half, half].some((wheel) => Math.abs(at.atMm + wheel - gapMm) < BRIDGE_MM);
  const beyondGap = roads.findIndex(({ westMm }, index) => index > 0 && bridges(westMm));
  return roads.slice(Math.max(beyondGap - 1, 0), beyondGap + 1).map((each) => each.name);
}

/** A lamp is a load as a motor is, which turns nothing. */
const lamp = (id: string, ohms: number, [a, b]: Ends): Element => ({
  kind: 'motor',
  id,
  a,
  b,
  ohms,
  emf: 0
});

type Ends = readonly [string, string];

/** Wheels of one rail: they join the rails of two roads while the loco crosses from one to the other. */
const wheels = (
  name: string,
  rail: 'feed' | 'return',
  roads: readonly string[]
): readonly Element[] =>
  roads.map((road) => ({
    kind: 'switch',
    id: `${name}'s ${rail} wheels on ${road}`,
    a: `${rail} rail ${road}`,
    b: `${rail} wheels of ${name}`,
    closed: true,
    ohms: contacts['wheel on rail'].ohms
  }));

/** A load on the roads that its wheels touch: between the rails of one, or behind wheels that join several. */
function loaded(
  name: string,
  on: readonly string[],
  load: (ends: Ends) => Element
): readonly Element[] {
  const [road] = on;
  if (road === undefined) return [];
  if (on.length === 1) return [load([`feed rail ${road}`, `return rail ${road}`])];
  return [
    ...wheels(name, 'feed', on),
    ...wheels(name, 'return', on),
    load([`feed wheels of ${name}`, `return wheels of ${name}`])
  ];
}

/** The elements that the locos and other stock of a scene add to its circuit. */
export function stockElements(yard: Yard, scene: Scene): readonly Element[] {
  const on = (name: string, at: Standing) => touches(lineOf(yard, scene.deck, at.road), name, at);
  const locos = Object.entries(scene.locos).flatMap(([name, at]) => {
    const loco = locoIn(yard, name);
    const emf = motorConstant(loco) * at.speed;
    return loaded(name, on(name, at), ([a, b]) => {
      return { kind: 'motor', id: name, a, b, ohms: loco.ohms, emf };
    });
  });
  const others = Object.entries(scene.stock).flatMap(([name, at]): readonly Element[] => {
    const kind = stockNamed(name)?.wheels;
    if (kind?.kind === 'lit')
      return loaded(name, on(name, at), (ends) => lamp(name, kind.ohms, ends));
    return (['feed', 'return'] as const).flatMap((rail) => wheels(name, rail, on(name, at)));
  });
  return [...locos, ...others];
}
