import * as v from 'valibot';
import { met, type Finding } from '../border';
import type { Run } from '../runs';
import type { Yard } from '../yard';
import { bridge } from './bridge';
import { comNc } from './com-nc';
import { crossed } from './crossed';
import { droppersCrossed } from './droppers-crossed';
import { early } from './early';
import { halfHome } from './half-home';
import { highOhms } from './high-ohms';
import type { FaultKind, Now } from './kind';
import { joined } from './joined';
import { lampBare } from './lamp-bare';
import { lampReversed } from './lamp-reversed';
import { linkBroken } from './link-broken';
import { linkedPast } from './linked-past';
import { shorted } from './shorted';
import { stuckOpen } from './stuck-open';
import { touching } from './touching';
import { welded } from './welded';
import { wireOff } from './wire-off';

/** Every kind of fault; a new one is one file and one name here. */
export const faultKinds = [
  stuckOpen,
  welded,
  wireOff,
  linkBroken,
  crossed,
  bridge,
  halfHome,
  early,
  comNc,
  highOhms,
  touching,
  droppersCrossed,
  shorted,
  linkedPast,
  joined,
  lampReversed,
  lampBare
] as const;

const schemas = [
  stuckOpen.schema,
  welded.schema,
  wireOff.schema,
  linkBroken.schema,
  crossed.schema,
  bridge.schema,
  halfHome.schema,
  early.schema,
  comNc.schema,
  highOhms.schema,
  touching.schema,
  droppersCrossed.schema,
  shorted.schema,
  linkedPast.schema,
  joined.schema,
  lampReversed.schema,
  lampBare.schema
] as const;

/** A fault as lessons, files and links write it: the first key tells the kind. */
export const FaultSchema = v.union(
  schemas,
  'a fault: ' + faultKinds.map((kind) => JSON.stringify(kind.example)).join(' or ')
);
export type Fault = Readonly<v.InferOutput<typeof FaultSchema>>;

const kindOf = (fault: Fault): FaultKind =>
  faultKinds.find((kind) => kind.key in fault) as unknown as FaultKind;

/** Every single fault that this yard can have, each once. */
export const faultsOf = (yard: Yard): readonly Fault[] =>
  faultKinds.flatMap((kind): readonly Fault[] => kind.places(yard));

/** A name of its own for a fault: its kind and place, whatever its ohms. */
export const faultName = (fault: Fault): string => {
  const kind = kindOf(fault);
  return `${kind.key}: ${kind.place(fault)}`;
};

/** What is wrong, in words: "toggle A never makes". */
export const faultWords = (fault: Fault): string => kindOf(fault).words(fault);

/** What puts it right, in words: "fit a new toggle A". */
export const repairWords = (fault: Fault): string => kindOf(fault).repair(fault);

/** The runs as these faults leave them, once hands have set the contacts. */
export const changeByFaults = (
  runs: readonly Run[],
  faults: readonly Fault[],
  now: Now
): readonly Run[] =>
  faults.reduce((before, fault) => kindOf(fault).change?.(before, fault, now) ?? before, runs);

/** The runs with the metal that these faults lay where none belongs; after the wire edits. */
export const addByFaults = (
  runs: readonly Run[],
  faults: readonly Fault[],
  now: Now
): readonly Run[] => [
  ...runs,
  ...faults.flatMap((fault) => kindOf(fault).adds?.(runs, fault, now) ?? [])
];

/** The runs as these faults leave them, with the metal that they lay. */
export const faulted = (runs: readonly Run[], faults: readonly Fault[], now: Now): readonly Run[] =>
  addByFaults(changeByFaults(runs, faults, now), faults, now);

/** Parts that lie in the runs which a fault changes: `faulted` needs these runs alone. */
export const faultParts = (yard: Yard, fault: Fault): readonly string[] =>
  kindOf(fault).at(fault, yard);

/** Whether a fault only opens what was closed, or adds ohms: then it brings a feed to no road that had none. */
export const onlyOpens = (fault: Fault): boolean => kindOf(fault).opens ?? false;

/** Whether what a fault does depends on where the deck stands. */
export const isByDeck = (fault: Fault): boolean => kindOf(fault).byDeck ?? false;

/** Most places named to somebody who named none of them. */
const NAMED = 20;

/** Faults which this yard cannot have, and those told twice. */
export function faultFindings(yard: Yard, faults: readonly Fault[]): readonly Finding[] {
  const names = faults.map(faultName);
  const places = new Map(
    [...new Set(faults.map(kindOf))].map((kind) => [kind, kind.places(yard).map(kind.place)])
  );
  return faults.flatMap((fault, index): readonly Finding[] => {
    const path = ['faults', index];
    if (names.indexOf(names[index] as string) < index) {
      return [{ path, met: `${met(fault)} a second time`, allowed: 'each fault once' }];
    }
    const kind = kindOf(fault);
    const there = places.get(kind) ?? [];
    if (there.includes(kind.place(fault))) return [];
    const more = there.length > NAMED ? ` and ${there.length - NAMED} more` : '';
    const allowed = there.length === 0 ? 'none in this yard' : there.slice(0, NAMED).join(', ');
    return [{ path, met: met(fault), allowed: `${allowed}${more}` }];
  });
}
