import { selectorStands, switchedRoads, type Yard } from '../../yard';

/** A thing that hands set, and where it can stand; the first stand is its rest. */
export interface Control {
  readonly name: string;
  readonly stands: readonly string[];
}

/** A stand for each control, by index. */
export type Setting = readonly number[];

const SELECTOR = 'selector';

/** The controls of a yard: one rotary selector, or a toggle or push for each switched road. */
export function controlsOf(yard: Yard): readonly Control[] {
  if (yard.switching === 'rotary') return [{ name: SELECTOR, stands: selectorStands(yard) }];
  return switchedRoads(yard).map((name) => ({ name, stands: ['off', 'on'] }));
}

/** The control that works a contact: the only one, or that of its road. */
export const controlOf = (controls: readonly Control[], contact: string): number =>
  controls[0]?.name === SELECTOR
    ? 0
    : controls.findIndex(({ name }) => name === contact.split(' ').at(-1));

/** Controls that do not rest, with their stands. */
export type Hands = Readonly<Record<string, string>>;

/** A setting as hands make it. */
export const handsOf = (controls: readonly Control[], setting: Setting): Hands =>
  Object.fromEntries(
    controls.flatMap(({ name, stands }, index) => {
      const stand = setting[index] ?? 0;
      return stand === 0 ? [] : [[name, stands[stand] as string]];
    })
  );

/** What a scene says of these hands. */
export const sceneHands = (hands: Hands) => {
  const { [SELECTOR]: selector = 'off', ...others } = hands;
  return {
    selector,
    switches: Object.fromEntries(Object.keys(others).map((name) => [name, true]))
  };
};

/** How hands stand, as clauses. */
export function handsWords(yard: Yard, hands: Hands): readonly string[] {
  const { selector, switches } = sceneHands(hands);
  const names = Object.keys(switches);
  if (selector !== 'off') {
    const [from, to] = selector.split('-');
    return [`the selector stands ${to ? `between ${from} and ${to}` : `at ${from}`}`];
  }
  if (names.length === 0) return [];
  const list = names.join(' and ');
  return [yard.switching === 'pushes' ? `push ${list} is held` : `${list} is switched on`];
}

const isAt = ({ stands }: Control, stand: number, road: string): boolean =>
  (stands[stand] as string).split('-').includes(road);

/** Settings that switch these roads on: together with toggles and pushes, one after the other with a selector. */
export function settingsFor(
  controls: readonly Control[],
  roads: readonly string[]
): readonly Setting[] {
  const [first] = controls;
  if (first?.name === SELECTOR) {
    const stands = roads.map((road) => first.stands.indexOf(road)).filter((stand) => stand > 0);
    return [[0], ...stands.map((stand) => [stand])];
  }
  return [controls.map(({ name }) => (roads.includes(name) ? 1 : 0))];
}

/** The settings with most contacts made while the switch of this road is off; all settings with a selector. */
export function settingsWithout(controls: readonly Control[], road?: string): readonly Setting[] {
  const [first] = controls;
  if (first?.name === SELECTOR) {
    return first.stands
      .map((_, stand) => stand)
      .filter((stand) => road === undefined || !isAt(first, stand, road))
      .map((stand) => [stand]);
  }
  return [controls.map(({ name }) => (name === road ? 0 : 1))];
}

/** How much hands have to do: a control each, and a little more for a selector between two stands. */
export const handWork = (hands: Hands): number =>
  Object.values(hands).reduce((sum, stand) => sum + (stand.includes('-') ? 1.5 : 1), 0);
