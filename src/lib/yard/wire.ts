import { contacts, wireOhmsPerMetre } from '../tables';
import type { Part, Run } from './runs';
import { hasToggle, roads, type Yard } from './yard';

type Length = Yard['wires']['main'];

const wirePart = (id: string, length: Length): Part => ({
  id,
  kind: 'wire',
  ohms: wireOhmsPerMetre(length.size) * length.lengthM,
  closed: true
});

const togglePart = (road: string): Part => ({
  id: `toggle ${road}`,
  kind: 'toggle',
  ohms: contacts.toggle.ohms,
  closed: false
});

function roadRuns(yard: Yard, road: string): readonly Run[] {
  const { dropper } = yard.wires;
  const feed = wirePart(`feed dropper ${road}`, dropper);
  return [
    {
      id: `feed ${road}`,
      from: `feed tag ${road}`,
      to: `feed rail ${road}`,
      job: 'feed',
      road,
      parts: hasToggle(yard, road) ? [togglePart(road), feed] : [feed]
    },
    {
      id: `return ${road}`,
      from: `return rail ${road}`,
      to: `return tag ${road}`,
      job: 'return',
      road,
      parts: [wirePart(`return dropper ${road}`, dropper)]
    }
  ];
}

/** Every leg runs from the controller past the first road's tag to the last road's. */
function busRuns(yard: Yard): readonly Run[] {
  const { main, link } = yard.wires;
  const names = roads(yard);
  const one = (job: Run['job'], id: string, [from, to]: [string, string], length: Length): Run => ({
    id,
    from,
    to,
    job,
    parts: [wirePart(id, length)]
  });
  const first = names[0] as string;
  const hops = names.slice(1).map((name, index) => [names[index] as string, name] as const);
  return [
    one('feed', 'feed wire', ['feed', `feed tag ${first}`], main),
    ...hops.map(([a, b]) =>
      one('feed', `feed link ${a}-${b}`, [`feed tag ${a}`, `feed tag ${b}`], link)
    ),
    ...hops.map(([a, b]) =>
      one('return', `loop link ${a}-${b}`, [`return tag ${b}`, `return tag ${a}`], link)
    ),
    one('return', 'return wire', [`return tag ${first}`, 'return'], main),
    ...(yard.return === 'ring' && names.length > 1
      ? [one('return', 'closing link', [`return tag ${names.at(-1)}`, 'return'], main)]
      : [])
  ];
}

/**
 * The wiring of a yard: one feed leg from tag to tag with a toggle in each road's branch,
 * one common return looped from road to road. Terminals are the nodes `feed` and `return`,
 * rails `feed rail A` and `return rail A`; toggles are open.
 */
export const wire = (yard: Yard): readonly Run[] => [
  ...busRuns(yard),
  ...roads(yard).flatMap((road) => roadRuns(yard, road))
];
