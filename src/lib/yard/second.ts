import { solve, type Element } from '../circuit';
import { contacts } from '../tables';
import type { Scene } from './scene';
import type { Yard } from './yard';

/** Terminal from which a feed comes. */
export type Feed = 'feed' | 'feed 2';

/** The feed terminal which serves a road. */
export const feedOf = (yard: Yard, road: string): Feed =>
  yard.second?.roads.includes(road) ? 'feed 2' : 'feed';

/** Volts of the second controller at full knob. */
export const secondVolts = (yard: Yard): number =>
  (yard.second && yard.second.shares === 'nothing' ? yard.second.supply : yard.supply).volts;

/** The feed terminals of a yard. */
export const feeds = (yard: Yard): readonly Feed[] => (yard.second ? ['feed', 'feed 2'] : ['feed']);

/** Below this a knob counts as at centre, V. Source: common practice. */
export const CENTRE_VOLTS = 0.05;

type Knobs = Pick<Scene, 'controller' | 'second'>;
type Powered = Knobs & Pick<Scene, 'supply'>;

/** Every controller of a yard: its name, its feed terminal, its knob and its volts at full knob. */
export const controllers = (yard: Yard, { controller, second }: Knobs) => [
  { id: 'controller', feed: 'feed' as Feed, knob: controller, supply: yard.supply },
  ...(yard.second
    ? [
        {
          id: 'controller 2',
          feed: 'feed 2' as Feed,
          knob: second,
          supply: yard.second.shares === 'supply' ? yard.supply : yard.second.supply
        }
      ]
    : [])
];

/**
 * The sources behind the feeds and the common return.
 *
 * With supplies of their own each controller is a source from its feed to the common return:
 * isolated, so that they meet in the return only.
 *
 * With one shared supply there is one source, from `supply +` to `supply -`, and each controller is
 * what such a controller is inside: a two-pole reverser and a regulator. One pole lays the return
 * on - (east) or + (west), the other the feed on + or -, through a regulator that keeps
 * (1 - |knob|) of the volts that the supply has with nothing on the feeds; at centre all poles are
 * open. Knobs turned opposite ways lay the common return on + and - at once: the engine finds what
 * the supply then gives, up to its limit, and what volts are left to regulate.
 */
export function controllerElements(yard: Yard, knobs: Powered): readonly Element[] {
  const all = controllers(yard, knobs);
  if (knobs.supply === 'off') return all.map(unplugged);
  if (yard.second?.shares !== 'supply') {
    return all.map(({ id, feed, knob, supply }) => ({
      kind: 'source',
      id,
      a: feed,
      b: 'return',
      volts: supply.volts * knob,
      ohms: supply.ohms,
      limit: supply.limitAmps
    }));
  }
  const { volts, ohms, limitAmps } = yard.supply;
  const [plus, minus] = ['supply +', 'supply -'] as const;
  const supplied: readonly Element[] = [
    { kind: 'source', id: 'supply', a: plus, b: minus, volts, ohms, limit: limitAmps },
    ...all.flatMap(reverser)
  ];
  const left = solve({ ground: minus, elements: supplied }).volts(plus) ?? 0;
  return [...supplied, ...all.map((each) => regulator(each, left))];
}

const unplugged = ({ id, feed, supply }: ReturnType<typeof controllers>[number]): Element => ({
  kind: 'switch',
  id,
  a: feed,
  b: 'return',
  closed: false,
  ohms: supply.ohms
});

interface Part {
  readonly id: string;
  readonly feed: Feed;
  readonly knob: number;
}

const inside = (id: string): string => `${id} regulator`;

function reverser({ id, knob }: Part): readonly Element[] {
  const pole = (job: 'feed' | 'return', sign: '+' | '-', closed: boolean): Element => ({
    kind: 'switch',
    id: `${id} ${job} on ${sign}`,
    a: job === 'feed' ? inside(id) : 'return',
    b: `supply ${sign}`,
    closed,
    ohms: contacts.toggle.ohms
  });
  return [
    pole('feed', '+', knob > 0),
    pole('feed', '-', knob < 0),
    pole('return', '-', knob > 0),
    pole('return', '+', knob < 0)
  ];
}

const regulator = ({ id, feed, knob }: Part, volts: number): Element => ({
  kind: 'source',
  id,
  a: feed,
  b: inside(id),
  volts: -Math.sign(knob) * (1 - Math.abs(knob)) * volts,
  ohms: contacts.toggle.ohms
});
