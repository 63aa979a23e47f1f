import { contactAmps, wireAmps } from '../tables';
import {
  ampsText,
  fleetOf,
  joinWords,
  read,
  roads,
  switchedRoads,
  type Part,
  type Reading,
  type Scene,
  type Yard
} from '../yard';
import type { Check, Finding } from './finding';
import { hungriest, roadScene } from './road-scene';

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

/** Which kind of run a wire belongs to. */
export const sizeOf = (yard: Yard, id: string): string => {
  const { main, link, dropper } = yard.wires;
  if (/dropper/.test(id)) return dropper.size;
  return (id === 'feed wire' || id === 'return wire' ? main : link).size;
};

function ratingOf(yard: Yard, { id, kind }: Part): Pick<Rated, 'what' | 'rating' | 'source'> {
  if (kind === 'wire') {
    const size = sizeOf(yard, id);
    return {
      what: `${size} wire`,
      rating: wireAmps(size),
      source: 'equipment-wire catalogues, from memory'
    };
  }
  const contact =
    kind === 'plug' ? 'plug contact' : kind === 'pin contact' ? 'micro-switch' : 'toggle';
  const { amps, source } = contactAmps[contact];
  return { what: contact, rating: amps, source };
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
  const shorts = roads(yard).map((road) =>
    told(roadScene({ yard, roads: [road], edits: [{ metal: `rails of ${road}` }] }))
  );
  const parts = full.reading.runs.filter(({ job }) => job !== 'lamp').flatMap((run) => run.parts);
  return parts.map((part) => {
    const normal = worstFor([full, ...singles], part.id);
    const short = worstFor(shorts, part.id);
    const [n, s] = [ampsIn(normal, part.id), ampsIn(short, part.id)];
    const { scene } = n >= s ? normal : short;
    return { id: part.id, ...ratingOf(yard, part), normal: n, short: s, scene };
  });
}

/** The part of one kind that is nearest to its rating. */
const tightest = (parts: readonly Rated[]): Rated =>
  parts.reduce((a, b) => (Math.max(b.normal, b.short) > Math.max(a.normal, a.short) ? b : a));

function kindFinding(yard: Yard, what: string, parts: readonly Rated[]): Finding {
  const { id, rating, normal, short, source, scene } = tightest(parts);
  const over = parts.filter((part) => Math.max(part.normal, part.short) > part.rating);
  const inUse = over.some((part) => part.normal > part.rating);
  return {
    grade: over.length === 0 ? 'fine' : inUse ? 'must fix' : 'think',
    what:
      over.length === 0
        ? `Every ${what} carries what it can see.`
        : `${joinWords(
            over.slice(0, 3).map((part) => part.id),
            'and'
          )} can see more than a ${what} may carry.`,
    where: (over.length > 0 ? over : [{ id }]).map((part) => part.id),
    amount: `${ampsText(normal)} in use and ${ampsText(short)} in a short, of ${ampsText(rating)}`,
    why: `The worst is the ${id}. A wire or contact that carries too much gets hot.`,
    cure:
      over.length === 0
        ? 'Nothing to do.'
        : 'Use a thicker wire or a stronger contact, or a lower limit.',
    source,
    board: { yard, scene }
  };
}

/** Every wire and contact against the current it can see. */
export const ratings: Check = {
  id: 'ratings',
  title: 'Which wire or contact carries too much?',
  run(yard) {
    const parts = ratedParts(yard);
    return [...new Set(parts.map(({ what }) => what))].map((what) =>
      kindFinding(
        yard,
        what,
        parts.filter((part) => part.what === what)
      )
    );
  }
};
