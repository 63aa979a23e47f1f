import { caseKey, closesLoop, coneOf, type Case } from './loop';
import { valueAt } from './value-at';
import type { Control } from './settings';
import type { Wiring } from './wiring';

/** A stand for some controls, by index; the others are not chosen yet. */
export type Choice = readonly (number | undefined)[];

/** Which contacts a setting makes; one not chosen yet makes what all of its stands make, or in hope what any does. */
export const madeBy =
  ({ switched }: Wiring, choice: Choice, hope = false) =>
  (contact: number): boolean => {
    const { by, made } = switched[contact] as Wiring['switched'][number];
    const stand = choice[by];
    if (stand !== undefined) return made[stand] as boolean;
    return hope ? made.includes(true) : !made.includes(false);
  };

/** The controls that a case may depend on, or undefined when no setting can make it live. */
const controlsIn = (each: Case): readonly number[] | undefined =>
  valueAt(each.network.known.controls, caseKey(each), () => {
    const { contacts } = coneOf(each);
    const { switched } = each.network.wiring;
    return contacts && [...new Set(contacts.map((contact) => switched[contact]?.by as number))];
  });

/** Cases that some setting can make live, gathered where they share controls. */
export function clusters(cases: readonly Case[]): readonly (readonly Case[])[] {
  const found: { readonly cases: readonly Case[]; readonly controls: ReadonlySet<number> }[] = [];
  for (const each of cases) {
    const own = controlsIn(each);
    if (!own) continue;
    const touched = found.filter(({ controls }) => own.some((one) => controls.has(one)));
    for (const other of touched) found.splice(found.indexOf(other), 1);
    found.push({
      cases: [...touched.flatMap((other) => other.cases), each],
      controls: new Set([...own, ...touched.flatMap((other) => [...other.controls])])
    });
  }
  return found.map((cluster) => cluster.cases);
}

/** Whether a setting makes one of the cases live. */
export const isLiveAt = (cases: readonly Case[], setting: Choice): boolean =>
  cases.some((each) => closesLoop(each, madeBy(each.network.wiring, setting)));

/** How many settings these controls have. */
export const settingsCount = (controls: readonly Control[]): bigint =>
  controls.reduce((product, { stands }) => product * BigInt(stands.length), 1n);

/** How many settings some of these controls have, by index. */
export const sizeOf = (some: readonly number[], all: readonly Control[]): bigint =>
  settingsCount(some.map((index) => all[index] as Control));
