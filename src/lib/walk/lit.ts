import { apply, holes, once, roads, vehicles, type Run, type Scene, type Yard } from '../yard';

/** What can be lit on a board beside its roads, its vehicles and the parts of its wires. */
const others = (yard: Yard): readonly string[] => [
  'controller',
  ...(yard.second ? ['controller 2'] : []),
  ...(holes(yard).length > 0 ? ['deck', 'pin'] : []),
  ...(yard.plug ? ['plug'] : [])
];

/** A moment of a yard, to be asked what there is to light in it. */
export interface Moment {
  readonly yard: Yard;
  readonly scene: Scene;
}

const runsOf = once(({ yard, scene }: Moment): readonly Run[] => apply(yard, scene));

/** The runs of a moment's wires. */
const runs = (yard: Yard, scene: Scene): readonly Run[] => runsOf(momentOf(scene)(yard));

/** One moment for each scene and yard, so that its wires are worked out once. */
const momentOf = once((scene: Scene) => once((yard: Yard): Moment => ({ yard, scene })));

/** Everything that can be lit in a scene, by kind: whole roads, vehicles, parts of each road, and what all roads share. */
export function lightable(yard: Yard, scene: Scene) {
  const all = runs(yard, scene).filter(({ job }) => job !== 'lamp');
  const ids = (some: readonly Run[]) => some.flatMap(({ parts }) => parts.map(({ id }) => id));
  return {
    roads: roads(yard).map((road) => `road ${road}`),
    vehicles: Object.keys(vehicles(scene)),
    shared: [...others(yard), ...ids(all.filter(({ road }) => road === undefined))],
    parts: ids(all.filter(({ road }) => road !== undefined)),
    lamps: ids(runs(yard, scene).filter(({ job }) => job === 'lamp'))
  };
}

/** Whether a name of what is lit is one of this moment. */
export const isThere = (yard: Yard, scene: Scene, name: string): boolean =>
  Object.values(lightable(yard, scene)).some((names) => names.includes(name));

/** The road to which something lit belongs; undefined for what all roads share. */
export function roadOfLit(yard: Yard, scene: Scene, name: string): string | undefined {
  const [, road] = /^road (.+)$/.exec(name) ?? [];
  if (road !== undefined) return roads(yard).includes(road) ? road : undefined;
  const standing = vehicles(scene)[name];
  if (standing) return standing.road;
  return runs(yard, scene).find(({ parts }) => parts.some(({ id }) => id === name))?.road;
}
