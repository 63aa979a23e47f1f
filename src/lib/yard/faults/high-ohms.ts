import * as v from 'valibot';
import { quantity } from '../border';
import { replacePart } from '../runs';
import { faultKind } from './kind';
import { partsOf, pinContacts, plugContacts, switchesOf } from './parts';

/** Resistance of the joint when none is given, Ω: too much for a loco, too little for a voltmeter to see. Source: common practice. */
const BAD_JOINT_OHMS = 200;

const wire = /(wire|link|dropper|deck return)/;

const called = (id: string): string => (wire.test(id) ? `the ${id}` : id);

/** A dry joint or dirty contact: a wire or contact that has ohms more than it should. */
export const highOhms = faultKind({
  key: 'highOhms',
  schema: v.strictObject({
    highOhms: quantity(0.1, 1e6, 'Ω'),
    in: v.string('the name of a wire or contact')
  }),
  places: (yard) =>
    [
      ...partsOf(yard, 'wire'),
      ...switchesOf(yard),
      ...plugContacts(yard),
      ...pinContacts(yard)
    ].map((id) => ({ highOhms: BAD_JOINT_OHMS, in: id })),
  place: (fault) => fault.in,
  at: (fault) => [fault.in],
  opens: true,
  change: (runs, fault) =>
    replacePart(runs, fault.in, (part) => [{ ...part, ohms: part.ohms + fault.highOhms }]),
  words: (fault) => `a bad joint of ${fault.highOhms} Ω is in ${called(fault.in)}`,
  repair: (fault) => `clean and make again the joints of ${called(fault.in)}`,
  example: { highOhms: 200, in: 'feed dropper A' }
});
