import {
  feedOf,
  holes,
  once,
  points,
  roadNamed,
  switchedRoads,
  trialsOf,
  wire,
  type Scene,
  type Trial,
  type Yard
} from '../yard';

/** A scene in which a yard is tested, and where in it anything can be held or seen. */
export interface Moment {
  readonly id: string;
  /** As a trial, or with the supply unplugged, or with the deck's plug pulled as well; a round goes through several. */
  readonly kind: Trial['kind'] | 'unplugged' | 'plug out' | 'round';
  /** How the scene is made, in words. */
  readonly words: string;
  readonly scene: Scene;
  /** The roads which it feeds as they should be; of wheels across a joint the two on which they stand. */
  readonly roads: readonly string[];
  /** Roads which it should leave dead. */
  readonly others: readonly string[];
  /** Pairs of points at which probes are worth holding. */
  readonly pairs: readonly Pair[];
}

/** Ids of two points. */
export type Pair = readonly [string, string];

const homeward = /return|joint/;

/** Every point but those of the panel lamps. */
const wayPoints = once((yard: Yard) => points(wire(yard).filter(({ job }) => job !== 'lamp')));

/** The points which a road's current passes, out and home, each node once. */
function wayOf(yard: Yard, road: string): { readonly out: string[]; readonly home: string[] } {
  const seen = new Set<string>();
  const all = wayPoints(yard).filter(({ id, node, road: own }) => {
    const mine = (own === undefined || own === road) && id !== 'feed' && !seen.has(node);
    if (mine) seen.add(node);
    return mine;
  });
  const ids = all.map(({ id }) => id);
  return {
    out: ids.filter((id) => !homeward.test(id)),
    home: ids.filter((id) => homeward.test(id) && id !== 'return')
  };
}

const startOf = (yard: Yard, road: string): string =>
  feedOf(yard, road) === 'feed' ? 'feed' : `feed tag ${road}`;

/** With volts on: each point of the way out against the return, each of the way home against the feed. */
function liveProbes(yard: Yard, road: string): readonly Pair[] {
  const { out, home } = wayOf(yard, road);
  const start = startOf(yard, road);
  return [
    [start, 'return'],
    ...out.filter((id) => id !== start).map((id): Pair => [id, 'return']),
    ...home.map((id): Pair => [start, id]),
    [`feed rail ${road}`, `return rail ${road}`]
  ];
}

/** Without: from each terminal as far as each point, and from rail to rail. */
function deadProbes(yard: Yard, road: string): readonly Pair[] {
  const { out, home } = wayOf(yard, road);
  const start = startOf(yard, road);
  return [
    ...out.filter((id) => id !== start).map((id): Pair => [start, id]),
    ...home.map((id): Pair => [id, 'return']),
    [`feed rail ${road}`, `return rail ${road}`]
  ];
}

/** The deck's halves of the plug, each with the next, and each with its rail. */
function plugProbes(yard: Yard): readonly Pair[] {
  const contacts = wire(yard)
    .flatMap(({ parts, road }) => parts.map((part) => ({ ...part, road })))
    .filter(({ kind }) => kind === 'plug');
  const feeds = contacts.filter(({ road }) => road !== undefined);
  const home = contacts.find(({ road }) => road === undefined);
  const row = [...feeds, ...(home ? [home] : [])].map(({ id }) => `${id} deck side`);
  return [
    ...row.slice(1).map((id, index): Pair => [row[index] as string, id]),
    ...feeds.map(({ id, road }): Pair => [`${id} deck side`, `feed rail ${road}`])
  ];
}

const handsWords = ({ kind, pair, scene }: Trial): string => {
  if (kind === 'off') return 'Everything is switched off';
  const on = Object.keys(scene.switches);
  if (kind === 'unpinned')
    return on.length === 0 ? 'The road is switched on' : 'All is switched on';
  return on.length === 0 && scene.selector === 'off'
    ? 'Nothing is switched'
    : `Only ${pair.length > 1 ? `what roads ${pair.join(' and ')} have` : `road ${pair[0]}`} is switched on`;
};

function wordsOf(trial: Trial): string {
  const deck =
    trial.stop === undefined ? '' : `, the deck is at ${trial.stop}, the pin is ${trial.scene.pin}`;
  return `${handsWords(trial)}${deck}, the knob is at full.`;
}

const at = (stop: string | undefined): string => (stop === undefined ? '' : ` at ${stop}`);

/** A trial as moments: as it is, and where it feeds a road, with the supply unplugged. */
function momentsOf(yard: Yard, trial: Trial, isFirst: boolean): readonly Moment[] {
  const { kind, stop, pair, asked, judged } = trial;
  const roads = kind === 'across' ? pair : judged;
  const id = `${kind} ${kind === 'unpinned' ? asked.join() : pair.join('-')}${at(stop)}`;
  const isWay = roads.length > 0 && (kind === 'own' || (kind === 'off' && isFirst));
  const scene = { ...trial.scene, ...(yard.second ? { second: 1 } : {}) };
  const live: Moment = {
    id,
    kind,
    words: wordsOf(trial),
    scene,
    roads,
    others: switchedRoads(yard).filter((road) => asked.includes(road) && !roads.includes(road)),
    pairs: isWay ? roads.flatMap((road) => liveProbes(yard, road)) : []
  };
  if (!isWay) return [live];
  return [
    live,
    {
      ...live,
      id: `unplugged ${id}`,
      kind: 'unplugged',
      words: `The supply is unplugged, all stock is off. ${wordsOf(trial)}`,
      scene: { ...scene, supply: 'off' },
      others: [],
      pairs: roads.flatMap((road) => deadProbes(yard, road))
    }
  ];
}

/** With the pin out a contact is tried at its own stop, and at one other. */
function isWorth(yard: Yard, { kind, asked, stop }: Trial): boolean {
  if (kind !== 'unpinned') return true;
  const all = holes(yard);
  const wholes = asked.map((road) => roadNamed(yard, road).whole);
  const mine = all.filter(({ fixed }) => wholes.includes(fixed)).map(({ name }) => name);
  const other = all.find(({ name }) => !mine.includes(name))?.name;
  return mine.includes(stop ?? '') || stop === other;
}

/** Every scene in which a yard is tested. */
export const moments = once((yard: Yard): readonly Moment[] => {
  const trials = trialsOf(yard).filter((trial) => isWorth(yard, trial));
  const first = trials.find(({ kind }) => kind === 'off');
  const all = trials.flatMap((trial) => momentsOf(yard, trial, trial === first));
  if (!yard.plug || !first) return all;
  return [
    ...all,
    {
      id: 'plug out',
      kind: 'plug out',
      words:
        'The supply is unplugged, all stock is off, the plug is out, everything is switched off.',
      scene: { ...first.scene, supply: 'off', plug: 'out' },
      roads: [],
      others: [],
      pairs: plugProbes(yard)
    }
  ];
});
