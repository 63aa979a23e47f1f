import { once } from './once';
import { contacts } from '../tables';
import { joinerRuns } from './cuts';
import { lampRuns } from './lamps';
import { roadsOf, type Road } from './road';
import type { Length, Part, Run } from './runs';
import { feedOf, feeds, type Feed } from './second';
import { switchPart } from './switching';
import { wirePart } from './wirePart';
import type { Yard } from './yard';

const contact = (kind: 'pin contact' | 'plug', id: string): Part => {
  const { ohms } = contacts[kind === 'plug' ? 'plug contact' : 'micro-switch'];
  return { id, kind, ohms, closed: false };
};

/** Whether the pin's contact stands in the road's feed; of a cut running road, in that of its deck-side section. */
const isInterlocked = (yard: Yard, { kind, bed, next }: Road): boolean =>
  kind === 'stabling'
    ? yard.interlocked
    : kind === 'running' &&
      yard.runningRoad === 'interlocked' &&
      !next[bed === 'west' ? 'east' : 'west'];

/** What stands in a road's feed, in the order in which the current meets it: interlock, switch, plug, dropper. */
function feedParts(yard: Yard, road: Road): readonly Part[] {
  const { name } = road;
  return [
    ...(isInterlocked(yard, road) ? [contact('pin contact', `pin contact ${name}`)] : []),
    ...switchPart(yard, road),
    ...(road.bed === 'deck' && yard.plug ? [contact('plug', `plug ${name}`)] : []),
    wirePart(`feed dropper ${name}`, yard.wires.dropper)
  ];
}

const roadRuns = (yard: Yard, road: Road): readonly Run[] => [
  {
    id: `feed ${road.name}`,
    from: `feed tag ${road.name}`,
    to: `feed rail ${road.name}`,
    job: 'feed',
    road: road.name,
    parts: feedParts(yard, road)
  },
  {
    id: `return ${road.name}`,
    from: `return rail ${road.name}`,
    to: `return tag ${road.name}`,
    job: 'return',
    road: road.name,
    parts: [wirePart(`return dropper ${road.name}`, yard.wires.dropper)]
  }
];

/** A feed leg goes from its controller past the first road's tag to the last road's. */
function feedLeg(
  { wires: { main, link } }: Yard,
  feed: Feed,
  names: readonly string[]
): readonly Run[] {
  return names.map((name, index) => {
    const before = names[index - 1];
    const id = before === undefined ? `${feed} wire` : `${feed} link ${before}-${name}`;
    const from = before === undefined ? feed : `feed tag ${before}`;
    return {
      id,
      from,
      to: `feed tag ${name}`,
      job: 'feed',
      parts: [wirePart(id, before === undefined ? main : link)]
    };
  });
}

/** Roads whose return goes home by one way: their tags, and the node at which they come together. */
interface Group {
  readonly names: readonly string[];
  readonly head: string;
  /** Wire from the first tag to the head, and back from the last in a ring. */
  readonly way: Length;
  readonly wayId: string;
  readonly closingId: string;
}

const tag = (name: string): string => `return tag ${name}`;

const returnRun = (id: string, from: string, to: string, length: Length): Run => ({
  id,
  from,
  to,
  job: 'return',
  parts: [wirePart(id, length)]
});

/** The tags of a group joined to its head: each by itself, or from one to the next, or in a ring. */
function groupRuns(yard: Yard, { names, head, way, wayId, closingId }: Group): readonly Run[] {
  const { link } = yard.wires;
  const [first] = names;
  const last = names.at(-1);
  if (first === undefined || last === undefined) return [];
  if (yard.return === 'star') {
    return names.map((name) => returnRun(`return wire ${name}`, tag(name), head, link));
  }
  const links = names.slice(1).map((name, index) => {
    const before = names[index] as string;
    return returnRun(`loop link ${before}-${name}`, tag(name), tag(before), link);
  });
  const ring = yard.return === 'ring' && first !== last;
  return [
    ...links,
    returnRun(wayId, tag(first), head, way),
    ...(ring ? [returnRun(closingId, tag(last), head, way)] : [])
  ];
}

/** Where the deck's return comes together, and where the returns of deck and fixed roads do. */
const DECK_JOINT = 'deck joint';
const JOINT = 'return joint';

/** A yard whose deck is wired for good: one group, straight to the controller. */
const plainReturn = (yard: Yard, names: readonly string[]): readonly Run[] =>
  yard.return === 'star'
    ? [
        ...groupRuns(yard, { names, head: JOINT, way: yard.wires.main, wayId: '', closingId: '' }),
        returnRun('return wire', JOINT, 'return', yard.wires.main)
      ]
    : groupRuns(yard, {
        names,
        head: 'return',
        way: yard.wires.main,
        wayId: 'return wire',
        closingId: 'closing link'
      });

/** A moving deck: its group comes home through the plug, the fixed roads of each end join on their own side. */
function movingReturn(yard: Yard, all: readonly Road[], contactsUsed: number): readonly Run[] {
  const { link, main } = yard.wires;
  const on = (bed: Road['bed']) => all.filter((road) => road.bed === bed).map(({ name }) => name);
  const fixed = (names: readonly string[]): Group => ({
    names,
    head: JOINT,
    way: link,
    wayId: `loop link ${names[0]}`,
    closingId: `closing link ${names.at(-1)}`
  });
  const plugs = Array.from({ length: contactsUsed }, (_, index): Run => {
    const id = `plug return ${index + 1}`;
    return { id, from: DECK_JOINT, to: JOINT, job: 'return', parts: [contact('plug', id)] };
  });
  return [
    ...groupRuns(yard, {
      names: on('deck'),
      head: DECK_JOINT,
      way: link,
      wayId: 'deck return',
      closingId: 'closing link'
    }),
    ...plugs,
    ...groupRuns(yard, fixed(on('west'))),
    ...groupRuns(yard, fixed(on('east'))),
    returnRun('return wire', JOINT, 'return', main)
  ];
}

/**
 * The wiring of a yard: a feed leg from tag to tag for each controller, with the contacts of each
 * road in its branch, one common return, and the panel lamps. Terminals are the nodes `feed` and `return`, rails `feed rail A` and
 * `return rail A`; every contact is open.
 */
export const wire = once((yard: Yard): readonly Run[] => {
  const all = roadsOf(yard);
  const names = all.map(({ name }) => name);
  return [
    ...feeds(yard).flatMap((feed) =>
      feedLeg(
        yard,
        feed,
        names.filter((name) => feedOf(yard, name) === feed)
      )
    ),
    ...(yard.plug ? movingReturn(yard, all, yard.plug.returnContacts) : plainReturn(yard, names)),
    ...all.flatMap((road) => roadRuns(yard, road)),
    ...joinerRuns(yard.cuts),
    ...lampRuns(yard)
  ];
});

/** The roads whose feed goes through a contact of the pin. */
export const pinnedRoads = (yard: Yard): readonly string[] =>
  wire(yard)
    .filter(({ parts }) => parts.some(({ kind }) => kind === 'pin contact'))
    .flatMap(({ road }) => road ?? []);
