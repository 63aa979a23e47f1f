import {
  admit,
  feedOf,
  fit,
  fleetOf,
  holes,
  motorConstant,
  roadNamed,
  SceneSchema,
  secondVolts,
  switchedRoads,
  type Edit,
  type Loco,
  type Scene,
  type Yard
} from '../yard';

/** The hungriest loco of a yard: the one with the greatest current held still. */
export const hungriest = (yard: Yard): Loco =>
  fleetOf(yard).reduce((most, each) => (each.ohms < most.ohms ? each : most));

/** The deck where a road has its feed: in its own hole if it is a fixed road, else in the first hole. */
const holeFor = (yard: Yard, road: string) => {
  const all = holes(yard);
  return (
    all.find(({ fixed }) => fixed === road) ??
    all.find(({ deckRoad }) => deckRoad === road) ??
    all[0]
  );
};

interface OnRoads {
  readonly yard: Yard;
  readonly roads: readonly string[];
  /** Speed of the locos, m/s. */
  readonly speed?: number;
  readonly edits?: readonly Edit[];
  /** Locos to place, one a road; none unless given. */
  readonly locos?: readonly string[];
}

/** Full knob east, the pin home where the first road has its feed, these roads switched on. */
export function roadScene({ yard, roads, speed = 0, edits = [], locos = [] }: OnRoads): Scene {
  const hole = holeFor(yard, roads[0] as string);
  const on = roads.filter((road) => switchedRoads(yard).includes(road));
  const hands =
    yard.switching === 'rotary'
      ? { selector: on[0] ?? 'off' }
      : { switches: Object.fromEntries(on.map((road) => [road, true])) };
  const scene = admit('scene', SceneSchema, {
    controller: 1,
    second: yard.second ? 1 : 0,
    ...hands,
    deck: hole?.deckMm ?? 0,
    pin: hole ? 'home' : 'out',
    locos: Object.fromEntries(
      locos.map((name, index) => {
        const road = roads[index] as string;
        const atMm = roadNamed(yard, road).lengthMm / 2;
        return [name, { road, atMm, faces: 'east' as const, speed, fallen: false }];
      })
    ),
    edits: [...edits]
  });
  return fit('scene', yard, scene);
}

/** The same with metal across the rails of the road: a short. */
export const shortScene = (yard: Yard, road: string): Scene =>
  roadScene({ yard, roads: [road], edits: [{ metal: `rails of ${road}` }] });

/** Volts of the road's controller at full knob. */
export const sourceVolts = (yard: Yard, road: string): number =>
  feedOf(yard, road) === 'feed' ? yard.supply.volts : secondVolts(yard);

/** The speed at which a loco takes its light current from these volts, m/s: (U − I₀·R) / k. */
export const lightSpeedAt = (loco: Loco, volts: number): number =>
  Math.max(0, (volts - loco.lightAmps * loco.ohms) / motorConstant(loco));
