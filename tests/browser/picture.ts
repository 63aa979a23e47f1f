import type { Locator } from '@playwright/test';

/** What a rail is drawn as, in the words of the table beside the picture. */
export type Drawn =
  | 'not told'
  | 'joined to the feed'
  | 'joined to the return'
  | 'at feed level, only through'
  | 'at return level, only through'
  | 'part way'
  | 'feed and return meet'
  | 'joined to nothing';

/** One road as it is drawn. */
export interface DrawnRoad {
  readonly road: string;
  readonly north: Drawn;
  readonly south: Drawn;
}

/** One road as it is drawn in the rows. */
export interface DrawnRow extends DrawnRoad {
  /** Kinds of line in the row, rails and droppers. */
  readonly inks: readonly string[];
  readonly chevrons: number;
  /** Arrows of running locos. */
  readonly arrows: number;
  /** Names of what stands on the road, and what is said of it. */
  readonly stock: string;
  /** Every word in the row's height. */
  readonly words: string;
}

/** Something drawn: its kind, and the box it takes in the picture, px. */
interface Shape {
  readonly kind: string;
  readonly dashed: boolean;
  readonly text: string;
  readonly west: number;
  readonly east: number;
  readonly top: number;
  readonly low: number;
}

const conductors = ['plain', 'casing', 'hollow', 'feed', 'return', 'core', 'divider', 'short'];

/** All that matters in each of these pictures. */
const shapes = (pictures: Locator): Promise<readonly (readonly Shape[])[]> =>
  pictures.evaluateAll(
    (all, known) => {
      const kindOf = (element: Element): string => {
        if (element.getAttribute('stroke')?.startsWith('url(')) return 'short';
        return known.find((kind) => element.classList.contains(kind)) ?? element.tagName;
      };
      return all.map((picture) =>
        [
          ...picture.querySelectorAll<SVGGraphicsElement>(
            'path:not(.own-supply *), text, circle:not(.own-supply *), ellipse'
          )
        ].map((element) => {
          const { x, y, width, height } = element.getBBox();
          const matrix = element.getCTM() as DOMMatrix;
          const [a, b] = [
            new DOMPoint(x, y).matrixTransform(matrix),
            new DOMPoint(x + width, y + height).matrixTransform(matrix)
          ] as const;
          return {
            kind: kindOf(element),
            dashed: element.hasAttribute('stroke-dasharray'),
            text: element.textContent?.trim() ?? '',
            west: Math.min(a.x, b.x),
            east: Math.max(a.x, b.x),
            top: Math.min(a.y, b.y),
            low: Math.max(a.y, b.y)
          };
        })
      );
    },
    [...conductors, 'chevron', 'arrow', 'stop', 'road', 'loco', 'word', 'letter-back', 'letter']
  );

function drawn(rail: readonly Shape[]): Drawn {
  const of = (kind: string) => rail.filter((shape) => shape.kind === kind);
  if (of('plain').length > 0) return 'not told';
  if (of('short').length > 0) return 'feed and return meet';
  const inks = (['feed', 'return'] as const).filter((kind) => of(kind).length > 0);
  if (inks.length === 2) return 'part way';
  const [ink] = inks;
  if (ink !== undefined) {
    const broken = of(ink).every(({ dashed }) => dashed);
    return broken ? `at ${ink} level, only through` : `joined to the ${ink}`;
  }
  const casing = of('casing');
  if (casing.length === 0 || casing.some(({ dashed }) => !dashed)) {
    throw new Error('A rail is drawn without ink, and not as joined to nothing.');
  }
  return 'joined to nothing';
}

const middleOf = ({ top, low }: Shape): number => (top + low) / 2;
const isConductor = ({ kind }: Shape): boolean => conductors.includes(kind);

/** From the rails' middle line to where words stand: above and below it, and above the rails' edge, px. */
interface Bands {
  readonly reach: number;
  readonly stock: readonly [top: number, low: number];
  readonly words: readonly [top: number, low: number];
}
const spaced: Bands = { reach: 46, stock: [-56, -30], words: [-34, 43] };
/** Of condensed rows the words stand in the height of their row. */
const condensed: Bands = { reach: 20, stock: [-25, 20], words: [-20, 20] };

/** The road between two stops: `stop` is the box of both. */
function rowAt(all: readonly Shape[], stop: Shape, road: string, bands: Bands): DrawnRow {
  const middle = middleOf(stop);
  const inHeight = ({ top, low }: Shape) =>
    top >= middle - bands.reach && low <= middle + bands.reach;
  // Upright lines are the legs that all roads share.
  const own = all.filter(
    (shape) => isConductor(shape) && inHeight(shape) && shape.east - shape.west > 1
  );
  const rails = own.filter(({ west, east }) => west > stop.west - 1 && east < stop.east + 1);
  const west = Math.min(...own.map((shape) => shape.west));
  const east = Math.max(...own.map((shape) => shape.east));
  const inside = (kind: string) =>
    all.filter(
      (shape) =>
        shape.kind === kind && inHeight(shape) && shape.west > west + 2 && shape.east < east - 2
    ).length;
  // Above the rails stand the words of the locos, below them the others: those of close rows interlock.
  const between = (shape: Shape, top: number, low: number) =>
    middleOf(shape) > middle + top && middleOf(shape) < middle + low;
  const stock = all.filter((shape) => shape.kind === 'loco' && between(shape, ...bands.stock));
  const texts = all.filter(
    (shape) =>
      (['text', 'road'].includes(shape.kind) && between(shape, ...bands.words)) ||
      (shape.kind === 'word' && between(shape, -50, -24))
  );
  const read = (shapes: readonly Shape[]) => shapes.map(({ text }) => text).join(' ');
  return {
    road,
    north: drawn(rails.filter((shape) => middleOf(shape) < middle)),
    south: drawn(rails.filter((shape) => middleOf(shape) > middle)),
    inks: [...new Set(own.map(({ kind }) => kind))].sort(),
    chevrons: inside('chevron'),
    arrows: inside('arrow'),
    stock: read(stock),
    words: read([...stock, ...texts])
  };
}

/** Reads the rows of each of these rows pictures, from their lines and inks. */
export const drawnRows = async (pictures: Locator): Promise<readonly (readonly DrawnRow[])[]> =>
  (await shapes(pictures)).map((all) => {
    const names = all.filter(({ kind }) => kind === 'road').map(({ text }) => text.split(' ')[0]);
    const stops = all.filter(({ kind }) => kind === 'stop');
    const bands = stops.length > 12 ? condensed : spaced;
    return stops.map((stop, index) => rowAt(all, stop, names[index] as string, bands));
  });

/** Reads the roads of each of these plans. */
export const drawnPlan = async (pictures: Locator): Promise<readonly (readonly DrawnRoad[])[]> =>
  (await shapes(pictures)).map((all) => {
    const letters = all.filter(({ kind }) => kind === 'letter');
    return all
      .filter(({ kind }) => kind === 'letter-back')
      .map((back, index) => {
        const middle = middleOf(back);
        const rails = all.filter(
          (shape) => isConductor(shape) && Math.abs(middleOf(shape) - middle) < 12
        );
        return {
          road: letters[index]?.text ?? '',
          north: drawn(rails.filter((shape) => middleOf(shape) < middle)),
          south: drawn(rails.filter((shape) => middleOf(shape) > middle))
        };
      });
  });
