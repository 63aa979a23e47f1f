import { roadScene } from '../../checks';
import {
  facing,
  feedOf,
  fit,
  holes,
  lampRoads,
  pinnedRoads,
  roadNamed,
  roadsOf,
  switchedRoads,
  type Edit,
  type Road,
  type Scene,
  type Yard
} from '../../yard';
import { probesWords, setWords, type Pair, type TestLine } from './line';
import { openings } from './opened';

/** A part of the card: its lines are done one after another. */
export interface Section {
  readonly title: string;
  readonly lines: readonly TestLine[];
}

/** A line, told by its scene. */
export const lineOf = (
  yard: Yard,
  line: Omit<TestLine, 'set' | 'where'> & { readonly where?: string }
): TestLine => ({
  where: probesWords(line.probes),
  ...line,
  set: setWords(yard, line.scene)
});

export const railsOf = (road: string): Pair => [`feed rail ${road}`, `return rail ${road}`];

/** A road ready to be live: its switch on, the pin home where its feed asks for it. */
export const ready = (yard: Yard, road: string): Scene => roadScene({ yard, roads: [road] });

const off = (yard: Yard, scene: Scene): Scene =>
  fit('scene', yard, { ...scene, switches: {}, selector: 'off' });

const unplugged = (scene: Scene): Scene => ({ ...scene, supply: 'off' });

const isSwitched = (yard: Yard, road: string): boolean => switchedRoads(yard).includes(road);

/** Whether the pin's contact stands in a road's feed. */
const isGuarded = (yard: Yard, road: string): boolean => pinnedRoads(yard).includes(road);

/** Every switch on as far as the panel allows, and every switch off. */
function extremes(yard: Yard): readonly Scene[] {
  const all = roadsOf(yard).map(({ name }) => name);
  const on = roadScene({ yard, roads: all });
  const isHanded = yard.switching === 'toggles';
  return [...(switchedRoads(yard).length > 0 ? [off(yard, on)] : [on]), ...(isHanded ? [on] : [])];
}

const feedsOf = (yard: Yard): readonly string[] => [
  ...new Set(roadsOf(yard).map(({ name }) => feedOf(yard, name)))
];

/** The sections of a fixed road and of the deck that face each other with the deck here. */
const met = (yard: Yard, deckMm: number, whole: string) =>
  facing(yard, deckMm).filter(({ fixed }) => roadNamed(yard, fixed).whole === whole);

/** Before all else: no way from a controller's feed to its return, or to another controller's. */
function shortLines(yard: Yard): readonly TestLine[] {
  const feeds = feedsOf(yard);
  const [first = 'feed', ...others] = feeds;
  const pairs: readonly Pair[] = [
    ...feeds.map((feed): Pair => [feed, 'return']),
    ...others.map((feed): Pair => [first, feed])
  ];
  return extremes(yard).flatMap((scene) =>
    pairs.map((probes) =>
      lineOf(yard, { scene: unplugged(scene), probes, how: 'ohms', always: true })
    )
  );
}

/**
 * A road's own dead tests: its return goes home, its feed comes through, nothing joins the two. The last
 * is never left out where no one scene has all roads joined to their feed.
 */
function deadLines(yard: Yard, { name: road, bed }: Road): readonly TestLine[] {
  const on = unplugged(ready(yard, road));
  const line = (scene: Scene, probes: Pair): TestLine =>
    lineOf(yard, { road, scene, probes, how: 'ohms' });
  const feed: Pair = [feedOf(yard, road), `feed rail ${road}`];
  const byItself = isGuarded(yard, road) || ['rotary', 'pushes'].includes(yard.switching);
  return [
    line(on, ['return', `return rail ${road}`]),
    line(on, feed),
    ...(isSwitched(yard, road) ? [line(off(yard, on), feed)] : []),
    { ...line(on, railsOf(road)), ...(byItself && { always: true as const }) },
    ...(bed === 'deck' && yard.plug && yard.switching === 'none' ? plugLines(yard, road) : [])
  ];
}

/** Roads that no switch parts: the plug does. Its deck half goes to this road, and to no other. */
function plugLines(yard: Yard, road: string): readonly TestLine[] {
  const scene: Scene = { ...unplugged(ready(yard, road)), plug: 'out' };
  const deck = roadsOf(yard).filter(({ bed }) => bed === 'deck');
  const next = deck[deck.findIndex(({ name }) => name === road) + 1]?.name;
  const pairs: readonly Pair[] = [
    [`plug ${road} deck side`, `feed rail ${road}`],
    ...(next === undefined ? [] : [[`feed rail ${road}`, `feed rail ${next}`] as const])
  ];
  return pairs.map((probes) => lineOf(yard, { road, scene, probes, how: 'ohms' }));
}

/** Ohms of the test lamp that stands in the feed. Source: common practice, 12 V and 6 W. */
const SERIES_LAMP_OHMS = 24;

/** Where no switch parts them: the feed rails of a fixed road and of the deck road that faces it, the plug out. */
const gapLines = (yard: Yard): readonly TestLine[] =>
  yard.switching === 'none' && yard.plug
    ? holes(yard).flatMap(({ deckMm, fixed: whole }) =>
        met(yard, deckMm, whole).map(({ fixed, deckRoad }) =>
          lineOf(yard, {
            road: deckRoad,
            scene: { ...unplugged(ready(yard, fixed)), deck: deckMm, plug: 'out' },
            probes: [`feed rail ${fixed}`, `feed rail ${deckRoad}`],
            how: 'ohms'
          })
        )
      )
    : [];

/** First power through a lamp in the feed: what it takes is all that a short could get. */
const firstLines = (yard: Yard): readonly TestLine[] =>
  feedsOf(yard).flatMap((feed) => {
    const wireId = `${feed} wire`;
    const lamp: Edit = { resistor: SERIES_LAMP_OHMS, in: wireId };
    const id = `resistor in ${wireId}`;
    return extremes(yard).map((scene) =>
      lineOf(yard, {
        scene: { ...scene, edits: [lamp] },
        probes: [`${id} panel side`, `${id} rail side`],
        where: `across the lamp in the ${wireId}`,
        how: 'volts',
        always: true
      })
    );
  });

/** Every setting of what stands in a road's feed: switch, pin, plug. */
function settings(yard: Yard, { name, bed }: Road): readonly Scene[] {
  const on = ready(yard, name);
  const switched = isSwitched(yard, name) ? [on, off(yard, on)] : [on];
  return switched.flatMap((scene): readonly Scene[] => [
    scene,
    ...(bed === 'deck' && yard.plug ? [{ ...scene, plug: 'out' as const }] : []),
    ...(isGuarded(yard, name) && on.pin === 'home' ? [{ ...scene, pin: 'out' as const }] : [])
  ]);
}

/** The neighbour on the panel and on the plug: its switch must not feed this road. */
function neighbour(yard: Yard, road: string): readonly Scene[] {
  const all = switchedRoads(yard);
  const next = all.includes(road) ? all[all.indexOf(road) + 1] : undefined;
  return next === undefined ? [] : [ready(yard, next)];
}

const liveLines = (yard: Yard, road: Road): readonly TestLine[] =>
  [...settings(yard, road), ...neighbour(yard, road.name)].map((scene) =>
    lineOf(yard, { road: road.name, scene, probes: railsOf(road.name), how: 'load' })
  );

/** At each stop: the fixed road on, the deck road that faces it off. It must stay dead. */
const edgeLines = (yard: Yard): readonly TestLine[] =>
  holes(yard).flatMap(({ deckMm, fixed: whole }) =>
    met(yard, deckMm, whole)
      .filter(({ deckRoad }) => isSwitched(yard, deckRoad))
      .map(({ fixed, deckRoad }) =>
        lineOf(yard, {
          road: deckRoad,
          scene: { ...ready(yard, fixed), deck: deckMm, pin: 'home' },
          probes: railsOf(deckRoad),
          how: 'load'
        })
      )
  );

/** A fixed road and the deck road that faces it, both on: between like rails stand no volts. */
const jointLines = (yard: Yard): readonly TestLine[] =>
  roadsOf(yard)
    .filter(({ bed }) => bed !== 'deck')
    .flatMap(({ name }): readonly TestLine[] => {
      const { deck } = ready(yard, name);
      const deckRoad = facing(yard, deck).find(({ fixed }) => fixed === name)?.deckRoad;
      if (deckRoad === undefined || (yard.switching === 'rotary' && isSwitched(yard, name)))
        return [];
      const scene: Scene = { ...roadScene({ yard, roads: [name, deckRoad] }), deck };
      return (['feed', 'return'] as const).map((rail) =>
        lineOf(yard, {
          road: name,
          scene,
          probes: [`${rail} rail ${name}`, `${rail} rail ${deckRoad}`],
          how: 'load'
        })
      );
    });

/** Each panel lamp: the volts across its resistor tell its current. */
const lampLines = (yard: Yard): readonly TestLine[] =>
  lampRoads(yard).flatMap((road) => {
    const on = ready(yard, road);
    return [on, off(yard, on)].map((scene) =>
      lineOf(yard, {
        road,
        scene,
        probes: [`lamp resistor ${road} panel side`, `lamp resistor ${road} rail side`],
        where: `across the resistor of lamp ${road}`,
        how: 'volts'
      })
    );
  });

/** What tells one line from another, whatever its number. */
export const keyOf = ({ how, set, where, scene: { deck, pin } }: TestLine): string =>
  [how, set, Math.round(deck), pin, where].join('|');

/** Every line that the card can have, in the order in which one goes through them. */
export function sectionsOf(yard: Yard): readonly Section[] {
  const roads = roadsOf(yard);
  const seen = new Set<string>();
  const isNew = (line: TestLine) => !seen.has(keyOf(line)) && seen.add(keyOf(line));
  return [
    {
      title: 'Dead tests: supply unplugged, all stock off',
      lines: [
        ...shortLines(yard),
        ...roads.flatMap((road) => deadLines(yard, road)),
        ...gapLines(yard)
      ]
    },
    {
      title: 'First power: a 12 V, 6 W lamp in the feed, knob full east, no stock',
      lines: firstLines(yard)
    },
    {
      title: 'Under power: a 12 V, 6 W lamp beside the meter, knob full east, no stock',
      lines: [...roads.flatMap((road) => liveLines(yard, road)), ...edgeLines(yard)]
    },
    {
      title: 'Across the joint: the lamp from rail to like rail',
      lines: jointLines(yard)
    },
    { title: 'Panel lamps: the meter alone, knob full east', lines: lampLines(yard) },
    {
      title: 'Open, test, close again: the supply unplugged while you do',
      lines: openings(yard).map(({ road, open }) =>
        lineOf(yard, {
          road,
          scene: { ...ready(yard, road), edits: open.map((each) => ({ off: each })) },
          probes: railsOf(road),
          how: 'load',
          opens: true
        })
      )
    }
  ]
    .map(({ title, lines }) => ({ title, lines: lines.filter(isNew) }))
    .filter(({ lines }) => lines.length > 0);
}
