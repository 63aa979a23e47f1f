import { contactAmps, strandedSizes, wireAmps } from '../tables';
import {
  ampsText,
  fleetOf,
  read,
  roads,
  sentence,
  switchedRoads,
  type Part,
  type Reading,
  type Scene,
  type Yard
} from '../yard';
import { listed } from './listed';
import type { Check, Finding } from './finding';
import { hungriest, roadScene, shortScene } from './road-scene';

/** A part with what it may carry and what it can see, A. */
export interface Rated {
  readonly id: string;
  /** What it is made of: the size of a wire, or the kind of contact. */
  readonly what: string;
  readonly rating: number;
  readonly source: string;
  readonly normal: number;
  readonly short: number;
  /** The scene in which it sees most. */
  readonly scene: Scene;
}

/** What contacts are called by people and in the table of their ratings. */
const contactWords = {
  toggle: 'toggle',
  selector: 'rotary selector',
  push: 'push',
  'pin contact': 'micro-switch',
  plug: 'plug contact'
} as const;

/** What a part is made of and what it may carry; undefined for what has no rating, such as a rail joiner. */
function ratingOf({ kind, wire }: Part): Pick<Rated, 'what' | 'rating' | 'source'> | undefined {
  if (wire) {
    const { size } = wire;
    const source = 'equipment-wire catalogues, from memory';
    return { what: `${size} wire`, rating: wireAmps(size), source };
  }
  if (!(kind in contactWords)) return undefined;
  const what = contactWords[kind as keyof typeof contactWords];
  const { amps, source } = contactAmps[what];
  return { what, rating: amps, source };
}

/** Roads on which a loco can be held all at once: one for each loco there is. */
const busy = (yard: Yard): readonly string[] => {
  const withToggle = switchedRoads(yard);
  return (withToggle.length > 0 ? withToggle : roads(yard)).slice(0, fleetOf(yard).length);
};

/** A scene with what the engine says of it. */
interface Told {
  readonly scene: Scene;
  readonly reading: Reading;
}

const ampsIn = ({ reading }: Told, id: string): number => Math.abs(reading.amps(id));

/** The scene in which a part sees most. */
const worstFor = (told: readonly Told[], id: string): Told =>
  told.reduce((most, each) => (ampsIn(each, id) > ampsIn(most, id) ? each : most));

/** Each part with the greatest current it can see: every loco held still at once, and a short on each road in turn. */
export function ratedParts(yard: Yard): readonly Rated[] {
  const crowd = busy(yard);
  const locos = fleetOf(yard).map(({ name }) => name);
  const told = (scene: Scene): Told => ({ scene, reading: read(yard, scene) });
  const full = told(roadScene({ yard, roads: crowd, locos: locos.slice(0, crowd.length) }));
  const singles = roads(yard).map((road) =>
    told(roadScene({ yard, roads: [road], locos: [hungriest(yard).name] }))
  );
  const shorts = roads(yard).map((road) => told(shortScene(yard, road)));
  const parts = full.reading.runs.filter(({ job }) => job !== 'lamp').flatMap((run) => run.parts);
  return parts.flatMap((part) => {
    const rating = ratingOf(part);
    if (!rating) return [];
    const normal = worstFor([full, ...singles], part.id);
    const short = worstFor(shorts, part.id);
    const [n, s] = [ampsIn(normal, part.id), ampsIn(short, part.id)];
    const { scene } = n >= s ? normal : short;
    return [{ id: part.id, ...rating, normal: n, short: s, scene }];
  });
}

const most = ({ normal, short }: Rated): number => Math.max(normal, short);

/** The part that sees most. */
const tightest = (parts: readonly Rated[]): Rated =>
  parts.reduce((a, b) => (most(b) > most(a) ? b : a));

const isReturnContact = ({ id }: Pick<Rated, 'id'>): boolean => id.startsWith('plug return');

/** What carries the most that was seen: a thicker wire, more contacts side by side, or a lower limit. */
function cureFor(yard: Yard, worst: Rated): string {
  const { what, rating } = worst;
  const lower = `set the controller's limit to ${ampsText(rating)} or less`;
  if (what.endsWith('wire')) {
    const size = strandedSizes.find((each) => wireAmps(each) >= most(worst));
    return size ? `Use ${size} wire there, or ${lower}.` : sentence(lower);
  }
  if (isReturnContact(worst) && yard.plug) {
    const count = Math.ceil((most(worst) * yard.plug.returnContacts) / rating);
    return `Use ${count} return contacts side by side, or ${lower}.`;
  }
  return `Take one that is rated for ${ampsText(most(worst))} or more, or ${lower}.`;
}

/** What to mind even where nothing is amiss. */
const care: Readonly<Record<string, string>> = {
  'rotary selector':
    'Turn the selector with the knob at centre: a small one breaks only a fraction of an amp.',
  'plug contact': 'Plug and unplug with the supply off.'
};

/** All parts of one kind: a size of wire, or a kind of contact. */
interface Kind {
  readonly what: string;
  readonly parts: readonly Rated[];
}

const over = ({ parts }: Kind): readonly Rated[] =>
  parts.filter((part) => most(part) > part.rating);

function overFinding(yard: Yard, kind: Kind): Finding {
  const { what } = kind;
  const inUse = kind.parts.filter((part) => part.normal > part.rating);
  const bad = inUse.length > 0 ? inUse : over(kind);
  const worst = tightest(bad);
  const { id, rating, normal, short, source, scene } = worst;
  const names = listed(bad.map((part) => part.id));
  return {
    grade: inUse.length > 0 ? 'must fix' : 'think',
    what:
      inUse.length > 0
        ? `More flows through ${names} in use than a ${what} may carry.`
        : `In a short, more flows through ${names} than a ${what} may carry.`,
    where: over(kind).map((part) => part.id),
    amount: `${ampsText(normal)} with locos held still, ${ampsText(short)} in a short; a ${what} may carry ${ampsText(rating)}`,
    why: `Hardest worked: ${id}. What carries too much gets hot: insulation melts, contacts weld.`,
    cure: cureFor(yard, worst),
    source,
    board: { yard, scene }
  };
}

/** Every kind whose parts can all take what they will carry, in one finding with its figures. */
function fineFinding(yard: Yard, kinds: readonly Kind[]): Finding {
  const hardest = kinds.map(({ parts }) => tightest(parts));
  const worst = hardest.reduce((a, b) => (most(b) / b.rating > most(a) / a.rating ? b : a));
  const cares = kinds.flatMap(({ what }) => care[what] ?? []);
  return {
    grade: 'fine',
    what: `Every one of these can take what it will carry: ${hardest.map(({ what }) => what).join(', ')}.`,
    where: hardest.map(({ id }) => id),
    amount: `nearest to its rating is ${worst.id}: ${ampsText(most(worst))} of ${ampsText(worst.rating)}`,
    why: 'Tried with a loco held still on each road, with all locos held still at once, and with a short on each road. What carries too much gets hot.',
    cure: cares.length > 0 ? cares.join(' ') : 'Nothing to do.',
    source: 'catalogues of equipment wire, switches and connectors, from memory',
    board: { yard, scene: worst.scene },
    figures: {
      title: 'The part of each kind that sees most, and how much',
      columns: ['Kind', 'Part', 'Held still', 'In a short', 'May carry'],
      rows: hardest.map(({ what, id, normal, short, rating }) => [
        what,
        id,
        ampsText(normal),
        ampsText(short),
        ampsText(rating)
      ])
    }
  };
}

/** Every wire and contact against the current it can see. */
export const ratings: Check = {
  id: 'ratings',
  title: 'Which wire or contact carries too much?',
  run(yard) {
    const all = ratedParts(yard);
    const kinds = [...new Set(all.map(({ what }) => what))].map((what) => ({
      what,
      parts: all.filter((part) => part.what === what)
    }));
    const bad = kinds.filter((kind) => over(kind).length > 0);
    const fine = kinds.filter((kind) => !bad.includes(kind));
    return [
      ...bad.map((kind) => overFinding(yard, kind)),
      ...(fine.length > 0 ? [fineFinding(yard, fine)] : [])
    ];
  }
};
