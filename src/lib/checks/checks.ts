import { controllers } from './controllers';
import type { Check } from './finding';
import { gapProof } from './gap-proof';
import { lamps } from './lamps';
import { lightContacts } from './light-contacts';
import { offIsOff } from './off-is-off';
import { protection } from './protection';
import { ratings } from './ratings';
import { room } from './room';
import { running } from './running';
import { supply } from './supply';
import { workings } from './workings';

/** Every check, in the order of telling; a new one is one file and one name here. */
export const checks: readonly Check[] = [
  gapProof,
  protection,
  supply,
  room,
  workings,
  controllers,
  lamps,
  lightContacts,
  ratings,
  running,
  offIsOff
];
