import * as v from 'valibot';
import { faultKind } from './kind';
import { pinContacts, setClosed } from './parts';

/** An interlock switch wired to COM and NC: closed until the pin works it, open then. */
export const comNc = faultKind({
  key: 'comNc',
  schema: v.strictObject({ comNc: v.string('the name of a pin contact') }),
  places: (yard) => pinContacts(yard).map((comNc) => ({ comNc })),
  place: (fault) => fault.comNc,
  at: (fault) => [fault.comNc],
  change: (runs, fault) => setClosed(runs, fault.comNc, (made) => !made),
  words: (fault) => `${fault.comNc} is wired to COM and NC`,
  repair: (fault) => `move the wire of ${fault.comNc} from NC to NO`,
  example: { comNc: 'pin contact 1' }
});
