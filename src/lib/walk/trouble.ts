import type { Question } from '../predict';
import { roadsOf, switchedRoads, wire, type Road } from '../yard';
import { askOf } from './ask';
import {
  can,
  isAlone,
  knobOf,
  knobs,
  places,
  saysOf,
  sceneOf,
  switched,
  switchOn,
  type Ground,
  type SceneInput
} from './ground';
import { titled, type Draft } from './outlineSteps';
import type { WalkStep } from './walkthrough';

/** What is done to a fixed road without a pin contact, with nothing facing it. */
interface Plan {
  readonly given: SceneInput;
  readonly question: Question;
  readonly loco: string;
}

const hasPinContact = ({ yard }: Ground, road: string): boolean =>
  wire(yard).some(({ parts }) => parts.some(({ id }) => id === `pin contact ${road}`));

/** The locos which could be sent to the gap on a road: the one that waits there, or one from the deck. */
const sent = (ground: Ground, { kind }: Road): readonly string[] =>
  [kind === 'stabling' ? ground.waiting : undefined, ground.second, ground.first].flatMap(
    (name) => name ?? []
  );

/** Ways to send a loco over the edge of a road: from the middle, or from near its deck end. */
function plansFor(ground: Ground, road: Road): readonly Plan[] {
  const { yard } = ground;
  const out = road.bed === 'west' ? 'east' : 'west';
  const own = switchedRoads(yard).includes(road.name);
  const near = { east: road.lengthMm - 250, west: 250 }[out];
  const before = [(ground.two ?? ground.one).name];
  const starts = [near, road.lengthMm / 2];
  return places(yard)
    .filter((deck) => isAlone(yard, deck, road.name))
    .flatMap((deck) =>
      sent(ground, road).flatMap((loco) =>
        starts.map((atMm): Plan => {
          const locos = { [loco]: { road: road.name, atMm } };
          const turned = knobOf(yard, road.name, out);
          const done = own ? { ...switchOn(yard, road.name), ...turned } : turned;
          return {
            loco,
            given: { ...switched(yard, before), ...knobOf(yard, road.name, 'centre'), deck, locos },
            question: { do: done, falls: { of: [loco] } }
          };
        })
      )
    );
}

/** A loco falls: a fixed road whose feed has no contact of the pin. */
function fall(ground: Ground): WalkStep | undefined {
  const { yard } = ground;
  const open = roadsOf(yard).find(
    ({ bed, next, name }) =>
      bed !== 'deck' && !next[bed === 'west' ? 'east' : 'west'] && !hasPinContact(ground, name)
  );
  if (!open) return undefined;
  const own = switchedRoads(yard).includes(open.name);
  const found = plansFor(ground, open).find(({ given, question, loco }) => {
    const scene = can(() => sceneOf(ground, given));
    return scene && saysOf(yard, scene, question, loco) === 'falls in';
  });
  if (!found) return undefined;
  const feed = own
    ? 'Its feed has a switch, but no interlock.'
    : 'Its feed comes straight from the controller: no switch, no interlock.';
  return {
    heading: 'What can go wrong',
    words: [
      `${found.loco} stands on ${titled(yard, open)}.`,
      feed,
      'The deck has moved, so nothing faces it.'
    ].join(' '),
    scene: sceneOf(ground, found.given),
    lit: [`road ${open.name}`],
    show: ['plan', 'rows'],
    call: { ask: askOf(yard, found.question), question: found.question }
  };
}

/** A dropper comes off: the road is cut off, the others are not. */
function lostDropper(ground: Ground): WalkStep {
  const { yard, one, two, first, second } = ground;
  const own = switchedRoads(yard).includes(one.name);
  const before = two && own ? [two.name] : [];
  const done = own ? switchOn(yard, one.name) : knobs(yard, ground.way);
  const locos = [first, ...(second ? [second] : [])];
  const question = { do: done, about: locos };
  return {
    heading: 'What can go wrong',
    words: [
      `The *return dropper* of ${titled(yard, one)} has come off.`,
      own && !two ? 'Its switch is off.' : '',
      'Follow its row, out and home, before you call.'
    ]
      .filter(Boolean)
      .join(' '),
    scene: sceneOf(ground, {
      ...switched(yard, before),
      ...(own ? {} : knobs(yard, 'centre')),
      edits: [{ off: `return dropper ${one.name}` }]
    }),
    lit: [`return dropper ${one.name}`],
    show: ['rows'],
    call: { ask: askOf(yard, question), question }
  };
}

/** What can go wrong: a fall into the gap where the yard lets one happen, else a lost dropper. */
export const trouble: Draft = (ground) => fall(ground) ?? lostDropper(ground);
