import * as v from 'valibot';
import { holesAt } from '../deck';
import { faultKind } from './kind';
import { pinContacts, setClosed } from './parts';

/**
 * A pin contact that makes while the pin is not home: as soon as the deck stands in tolerance of one
 * of its holes. A pin is home or out here; one that has begun to enter counts as out, and it can enter
 * only where its hole lies under it. So the contact is made there with the pin out, and the deck is free.
 */
export const early = faultKind({
  key: 'early',
  schema: v.strictObject({ early: v.string('the name of a pin contact') }),
  places: (yard) => pinContacts(yard).map((early) => ({ early })),
  place: (fault) => fault.early,
  at: (fault) => [fault.early],
  byDeck: true,
  change(runs, fault, { yard, deckMm }) {
    const under = holesAt(yard, deckMm).some(({ fixed }) => fault.early === `pin contact ${fixed}`);
    return setClosed(runs, fault.early, (made) => made || under);
  },
  words: (fault) => `${fault.early} makes before the pin is home`,
  repair: (fault) => `set ${fault.early} so that it makes last, with the pin fully home`,
  example: { early: 'pin contact 1' }
});
