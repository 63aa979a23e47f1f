import { once } from '../once';
import { deckRoads } from '../road';
import { replacePart, type Part, type Run } from '../runs';
import { wire } from '../wire';
import type { Yard } from '../yard';

/** Names of the yard's parts of these kinds, in the order in which they are wired. */
export const partsOf = (yard: Yard, ...kinds: readonly Part['kind'][]): readonly string[] =>
  wire(yard)
    .flatMap(({ parts }) => parts)
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ id }) => id);

/** Names of the switches by which hands feed a road. */
export const switchesOf = (yard: Yard): readonly string[] =>
  partsOf(yard, 'toggle', 'selector', 'push');

/** Names of the contacts that the pin works. */
export const pinContacts = (yard: Yard): readonly string[] => partsOf(yard, 'pin contact');

/** The runs with the contact or wire `id` made or open, whatever it was. */
export const setClosed = (
  runs: readonly Run[],
  id: string,
  closed: (before: boolean) => boolean
): readonly Run[] => replacePart(runs, id, (part) => [{ ...part, closed: closed(part.closed) }]);

/** Metal of so many ohms from node to node, where none belongs. */
export const metalRun = (id: string, from: string, to: string, ohms: number): Run => ({
  id,
  from,
  to,
  job: 'feed',
  parts: [{ id, kind: 'metal', ohms, closed: true }]
});

/** Each name with the next. */
export const neighbours = (names: readonly string[]): readonly [string, string][] =>
  names.slice(1).map((name, index) => [names[index] as string, name]);

/** The same two names, whichever stands first. */
export const pairName = (pair: readonly string[]): string => [...pair].sort().join(' and ');

const returnLink = /^(loop link|closing link|deck return|return wire .)/;

/** Whether a wire is a link of the common return, and not a dropper or the way to the controller. */
export const isReturnLink = (id: string): boolean => returnLink.test(id);

/** The plug's contacts in the order in which they stand: the feeds of the deck's roads, the return last. */
export const plugContacts = once((yard: Yard): readonly string[] =>
  yard.plug
    ? [
        ...deckRoads(yard).map((road) => `plug ${road}`),
        ...Array.from({ length: yard.plug.returnContacts }, (_, at) => `plug return ${at + 1}`)
      ]
    : []
);

/** Whether a plug contact carries the return. */
export const isPlugReturn = (id: string): boolean => id.startsWith('plug return ');
