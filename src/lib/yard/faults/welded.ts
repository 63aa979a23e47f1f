import * as v from 'valibot';
import { faultKind } from './kind';
import { pinContacts, setClosed, switchesOf } from './parts';

/** A contact that never opens. A plug contact cannot: the plug parts it. */
export const welded = faultKind({
  key: 'welded',
  schema: v.strictObject({ welded: v.string('the name of a toggle or pin contact') }),
  places: (yard) => [...switchesOf(yard), ...pinContacts(yard)].map((welded) => ({ welded })),
  place: (fault) => fault.welded,
  at: (fault) => [fault.welded],
  change: (runs, fault) => setClosed(runs, fault.welded, () => true),
  words: (fault) => `${fault.welded} never opens`,
  repair: (fault) => `fit a new ${fault.welded}`,
  example: { welded: 'toggle A' }
});
