import * as v from 'valibot';
import { faultKind } from './kind';
import { isReturnLink, partsOf, setClosed } from './parts';

/** A link of the common return that is broken: from road to road, or from a road to where they meet. */
export const linkBroken = faultKind({
  key: 'linkBroken',
  schema: v.strictObject({ linkBroken: v.string('the name of a link of the return') }),
  places: (yard) =>
    partsOf(yard, 'wire')
      .filter(isReturnLink)
      .map((linkBroken) => ({ linkBroken })),
  place: (fault) => fault.linkBroken,
  at: (fault) => [fault.linkBroken],
  opens: true,
  change: (runs, fault) => setClosed(runs, fault.linkBroken, () => false),
  words: (fault) => `the ${fault.linkBroken} is broken`,
  repair: (fault) => `solder a new ${fault.linkBroken} in`,
  example: { linkBroken: 'loop link A-B' }
});
