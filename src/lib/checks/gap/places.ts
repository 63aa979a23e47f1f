import { holes, roadsOf, travel, type Road, type Yard } from '../../yard';

/** A deck road in line with a fixed road. */
export interface Joint {
  readonly fixed: string;
  readonly deckRoad: string;
}

/** An end of a road at which a loco would fall. */
export interface OpenEnd {
  readonly road: string;
  readonly end: 'west' | 'east';
}

/** All deck positions at which the same ends are open, the same roads face and the same holes are under the pin. */
export interface DeckPlace {
  /** One position of the kind, mm. */
  readonly deckMm: number;
  /** Whole fixed roads whose hole lies under the pin; the pin can go home when there is one. */
  readonly holes: readonly string[];
  readonly joints: readonly Joint[];
  readonly open: readonly OpenEnd[];
}

interface Ground {
  readonly yard: Yard;
  readonly fixed: readonly Road[];
  readonly deck: readonly Road[];
}

/** Whether no other section of a cut road lies between this one and the gap, at this end of it. */
const endsAtGap = ({ next }: Road, end: OpenEnd['end']): boolean => next[end] === undefined;

/** The end of a fixed road at which the deck is. */
const deckEnd = ({ bed }: Road): OpenEnd['end'] => (bed === 'west' ? 'east' : 'west');

function ground(yard: Yard): Ground {
  const all = roadsOf(yard);
  return {
    yard,
    fixed: all.filter((road) => road.bed !== 'deck' && endsAtGap(road, deckEnd(road))),
    deck: all.filter(({ bed }) => bed === 'deck')
  };
}

/** A deck position, and how wide the piece of travel is that it stands for. */
interface Position {
  readonly mm: number;
  readonly widthMm: number;
}

/** Each position at which a road comes into line or into an opening, or leaves it, and one between each two. */
function positions({ yard, fixed, deck }: Ground): readonly Position[] {
  const { least, most } = travel(yard);
  const reach = [yard.toleranceMm, yard.openingMm / 2];
  const edges = fixed.flatMap(({ southMm }) =>
    deck.flatMap((road) => reach.flatMap((by) => [-by, by].map((s) => southMm - road.southMm + s)))
  );
  const inside = [...new Set([least, most, ...edges])]
    .filter((mm) => mm >= least && mm <= most)
    .sort((a, b) => a - b);
  return inside.flatMap((mm, index) => {
    const next = inside[index + 1];
    const edge = { mm, widthMm: 0 };
    return next === undefined ? [edge] : [edge, { mm: (mm + next) / 2, widthMm: next - mm }];
  });
}

/** How far a deck road is out of line with a fixed one, mm. */
const outOfLine = (fixed: Road, road: Road, deckMm: number): number =>
  Math.abs(road.southMm + deckMm - fixed.southMm);

function placeAt({ yard, fixed, deck }: Ground, deckMm: number): DeckPlace {
  const near: { readonly there: Road; readonly road: Road; readonly by: number }[] = [];
  for (const road of deck) {
    for (const there of fixed) {
      if (!endsAtGap(road, there.bed as OpenEnd['end'])) continue;
      const by = outOfLine(there, road, deckMm);
      if (by < yard.openingMm / 2 || by <= yard.toleranceMm) near.push({ there, road, by });
    }
  }
  const facing = near.filter(({ by }) => by <= yard.toleranceMm);
  const faces = (name: string) =>
    facing.some(({ there, road }) => there.name === name || road.name === name);
  const open = new Map<string, OpenEnd>();
  for (const { there, road } of near) {
    const end = there.bed as OpenEnd['end'];
    const meets = facing.some((pair) => pair.road === road && pair.there.bed === end);
    if (!meets) open.set(`${road.name} ${end}`, { road: road.name, end });
  }
  return {
    deckMm,
    holes: near
      .filter(({ there, road }) => there.kind === 'running' || road.whole === yard.facesStabling)
      .filter(
        ({ there, road }) => Math.abs(there.southMm - road.southMm - deckMm) <= yard.toleranceMm
      )
      .map(({ there }) => there.whole),
    joints: facing.map(({ there, road }) => ({ fixed: there.name, deckRoad: road.name })),
    open: [
      ...fixed
        .filter(({ name }) => !faces(name))
        .map((road): OpenEnd => ({ road: road.name, end: deckEnd(road) })),
      ...open.values()
    ]
  };
}

const signature = ({ holes, joints, open }: DeckPlace): string =>
  JSON.stringify([holes, joints, open]);

/** One place of each kind: the middle of its widest piece of travel. */
function kindsAt(here: Ground, all: readonly Position[]): readonly DeckPlace[] {
  const kinds = new Map<string, { readonly place: DeckPlace; readonly widthMm: number }>();
  for (const { mm, widthMm } of all) {
    const place = placeAt(here, mm);
    const key = signature(place);
    const known = kinds.get(key);
    if (!known || known.widthMm < widthMm) kinds.set(key, { place, widthMm });
  }
  return [...kinds.values()].map(({ place }) => place);
}

/**
 * Every kind of place the deck can stand in with the pin out: two positions with the same open ends,
 * joints and holes are one place. Tolerances and openings cut the travel into finitely many pieces,
 * and each edge of a piece and one position inside it are tried.
 */
export function deckPlaces(yard: Yard): readonly DeckPlace[] {
  const here = ground(yard);
  return kindsAt(here, positions(here));
}

/** Every kind of place with the pin home: it holds the deck in line with its hole. */
export const pinnedPlaces = (yard: Yard): readonly DeckPlace[] =>
  kindsAt(
    ground(yard),
    holes(yard).map(({ deckMm }) => ({ mm: deckMm, widthMm: 0 }))
  );
