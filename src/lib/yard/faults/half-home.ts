import * as v from 'valibot';
import { count } from '../border';
import { faultKind } from './kind';
import type { Yard } from '../yard';
import { plugContacts } from './parts';

interface Askew {
  readonly halfHome: number;
  readonly end: 'first' | 'last';
}

/** The contacts that do not make. */
function openOf({ halfHome: missing, end }: Askew, yard: Yard): readonly string[] {
  const all = plugContacts(yard);
  return end === 'first' ? all.slice(0, missing) : all.slice(-missing);
}

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
  at: (fault, yard) => openOf(fault, yard),
  opens: true,
  change(runs, fault, { yard }) {
    const open = new Set(openOf(fault, yard));
    return runs.map((run) => ({
      ...run,
      parts: run.parts.map((part) => (open.has(part.id) ? { ...part, closed: false } : part))
    }));
  },
  words: (fault) =>
    fault.halfHome === 1
      ? `the plug is half home: its ${fault.end} contact does not make`
      : `the plug is half home: its ${fault.end} ${fault.halfHome} contacts do not make`,
  repair: () => 'push the plug fully home',
  example: { halfHome: 2, end: 'first' }
});
