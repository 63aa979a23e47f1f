import type { Element } from '../circuit';
import { contacts } from '../tables';
import { beyond } from './deck';
import { locoNamed, motorConstant, type Loco } from './locos';
import { roadNamed } from './road';
import type { Standing, Scene } from './scene';
import type { Yard } from './yard';

/** The roads on which a loco's pick-ups stand: its own, and the one it is coming from or going to. */
export function touches(yard: Yard, deck: number, name: string, at: Standing): readonly string[] {
  const half = locoNamed(name).pickupSpanMm / 2;
  const { lengthMm } = roadNamed(yard, at.road);
  const over = at.atMm + half > lengthMm ? 'east' : at.atMm - half < 0 ? 'west' : undefined;
  if (!over) return [at.road];
  const next = beyond(yard, deck, at.road, over);
  return next.kind === 'road' ? [at.road, next.road] : [at.road];
}

const motor = (
  name: string,
  loco: Loco,
  speed: number,
  [a, b]: readonly [string, string]
): Element => ({
  kind: 'motor',
  id: name,
  a,
  b,
  ohms: loco.ohms,
  emf: motorConstant(loco) * speed
});

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

/** The elements that the locos of a scene add to its circuit. */
export function stockElements(yard: Yard, scene: Scene): readonly Element[] {
  return Object.entries(scene.locos).flatMap(([name, at]): readonly Element[] => {
    if (at.fallen) return [];
    const loco = locoNamed(name);
    const on = touches(yard, scene.deck, name, at);
    if (on.length === 1) {
      return [motor(name, loco, at.speed, [`feed rail ${at.road}`, `return rail ${at.road}`])];
    }
    return [
      ...wheels(name, 'feed', on),
      ...wheels(name, 'return', on),
      motor(name, loco, at.speed, [`feed wheels of ${name}`, `return wheels of ${name}`])
    ];
  });
}
