import * as v from 'valibot';
import { count } from '../border';
import { faultKind } from './kind';
import { plugContacts, setClosed } from './parts';

/** The plug stands askew: its contacts at one end do not make. All of them open would be a plug that is out. */
export const halfHome = faultKind({
  key: 'halfHome',
  schema: v.strictObject({
    halfHome: count(1, 60, 'contacts'),
    end: v.picklist(['first', 'last'], 'first or last')
  }),
  places: (yard) =>
    (['first', 'last'] as const).flatMap((end) =>
      plugContacts(yard)
        .slice(1)
        .map((_, index) => ({ halfHome: index + 1, end }))
    ),
  place: (fault) => `the ${fault.end} ${fault.halfHome} of the plug`,
  change(runs, { halfHome: missing, end }, { yard }) {
    const all = plugContacts(yard);
    const open = end === 'first' ? all.slice(0, missing) : all.slice(-missing);
    return open.reduce((now, id) => setClosed(now, id, () => false), runs);
  },
  words: (fault) =>
    fault.halfHome === 1
      ? `the plug is half home: its ${fault.end} contact does not make`
      : `the plug is half home: its ${fault.end} ${fault.halfHome} contacts do not make`,
  repair: () => 'push the plug fully home',
  example: { halfHome: 2, end: 'first' }
});
