import * as v from 'valibot';
import { contacts } from '../../tables';
import { findPart, type Run } from '../runs';
import { faultKind } from './kind';
import { isPlugReturn, metalRun, neighbours, pairName, plugContacts, switchesOf } from './parts';

/** The side of a contact on which its road's wire is soldered: of a plug, the deck's half. */
const roadSide = (runs: readonly Run[], id: string): string => {
  const { from, to } = findPart(runs, id);
  return isPlugReturn(id) ? from : to;
};

/**
 * Solder from one contact to its neighbour, on the side of the rails: of toggles in a row, or of plug
 * contacts, which stand in the order of the deck's roads with the return last. Two return contacts
 * are joined anyway.
 */
export const bridge = faultKind({
  key: 'bridge',
  schema: v.strictObject({
    bridge: v.tuple([v.string(), v.string()], 'two contacts, such as [plug A, plug B]')
  }),
  places: (yard) =>
    [plugContacts(yard), switchesOf(yard)]
      .flatMap(neighbours)
      .filter((pair) => !pair.every(isPlugReturn))
      .map((bridge) => ({ bridge })),
  place: (fault) => pairName(fault.bridge),
  at: (fault) => fault.bridge,
  adds(runs, { bridge: [one, other] }) {
    const id = `bridge ${one} to ${other}`;
    const [from, to] = [roadSide(runs, one), roadSide(runs, other)];
    const { ohms } = contacts.terminal;
    return [metalRun(id, from, to, ohms)];
  },
  words: ({ bridge: [one, other] }) => `solder bridges ${one} and ${other}`,
  repair: ({ bridge: [one, other] }) => `take the solder off between ${one} and ${other}`,
  example: { bridge: ['plug A', 'plug B'] }
});
