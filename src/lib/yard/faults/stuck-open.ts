import * as v from 'valibot';
import { faultKind } from './kind';
import { pinContacts, plugContacts, setClosed, switchesOf } from './parts';

/** A contact that never makes, whatever works it. */
export const stuckOpen = faultKind({
  key: 'stuckOpen',
  schema: v.strictObject({ stuckOpen: v.string('the name of a contact') }),
  places: (yard) =>
    [...switchesOf(yard), ...plugContacts(yard), ...pinContacts(yard)].map((stuckOpen) => ({
      stuckOpen
    })),
  place: (fault) => fault.stuckOpen,
  at: (fault) => [fault.stuckOpen],
  opens: true,
  change: (runs, fault) => setClosed(runs, fault.stuckOpen, () => false),
  words: (fault) => `${fault.stuckOpen} never makes`,
  repair: (fault) => `clean ${fault.stuckOpen}, or fit a new one`,
  example: { stuckOpen: 'toggle A' }
});
