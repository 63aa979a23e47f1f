import * as v from 'valibot';
import { faultKind } from './kind';
import { isReturnLink, partsOf, setClosed } from './parts';

/** A wire that has come off, or is open inside: a dropper, a hop of the feed, or the way home. */
export const wireOff = faultKind({
  key: 'wireOff',
  schema: v.strictObject({ wireOff: v.string('the name of a wire') }),
  places: (yard) =>
    partsOf(yard, 'wire')
      .filter((id) => !isReturnLink(id))
      .map((wireOff) => ({ wireOff })),
  place: (fault) => fault.wireOff,
  at: (fault) => [fault.wireOff],
  opens: true,
  change: (runs, fault) => setClosed(runs, fault.wireOff, () => false),
  words: (fault) => `the ${fault.wireOff} is off`,
  repair: (fault) => `solder the ${fault.wireOff} on again`,
  example: { wireOff: 'feed dropper A' }
});
