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

/** One road as it is drawn in the rows. */
export interface DrawnRow {
  readonly road: string;
  /** The north rail and the south rail. */
  readonly north: Drawn;
  readonly south: Drawn;
  /** Kinds of line in the row, rails and droppers. */
  readonly inks: readonly string[];
  readonly chevrons: number;
  /** Arrows of running locos. */
  readonly arrows: number;
  /** Every word in the row's height. */
  readonly words: string;
}

/** Reads the rows of one rows picture from its lines and inks. */
export const drawnRows = (svg: Locator): Promise<readonly DrawnRow[]> =>
  svg.evaluate((picture) => {
    interface Line {
      readonly kind: string;
      readonly dashed: boolean;
      readonly box: DOMRect;
    }
    const place = (element: SVGGraphicsElement): DOMRect => {
      const { x, y, width, height } = element.getBBox();
      const matrix = element.getCTM() as DOMMatrix;
      const [a, b] = [
        new DOMPoint(x, y).matrixTransform(matrix),
        new DOMPoint(x + width, y + height).matrixTransform(matrix)
      ] as const;
      return new DOMRect(
        Math.min(a.x, b.x),
        Math.min(a.y, b.y),
        Math.abs(b.x - a.x),
        Math.abs(b.y - a.y)
      );
    };
    const all = (selector: string) => [...picture.querySelectorAll<SVGGraphicsElement>(selector)];
    const kinds = ['plain', 'casing', 'hollow', 'feed', 'return', 'core', 'divider'];
    const kindOf = (path: Element): string | undefined => {
      if (path.getAttribute('stroke')?.startsWith('url(')) return 'short';
      return kinds.find((kind) => path.classList.contains(kind));
    };
    const lines: Line[] = all('path').flatMap((path) => {
      const kind = kindOf(path);
      const dashed = path.hasAttribute('stroke-dasharray');
      return kind === undefined ? [] : [{ kind, dashed, box: place(path) }];
    });
    const drawn = (rail: readonly Line[]): Drawn => {
      const of = (kind: string) => rail.filter((line) => line.kind === kind);
      if (of('plain').length > 0) return 'not told';
      if (of('short').length > 0) return 'feed and return meet';
      const inks = (['feed', 'return'] as const).filter((kind) => of(kind).length > 0);
      if (inks.length === 2) return 'part way';
      const [ink] = inks;
      if (ink === undefined) {
        if (of('casing').every((line) => line.dashed)) return 'joined to nothing';
        throw new Error('A rail without ink has a solid casing.');
      }
      return of(ink).every((line) => line.dashed)
        ? `at ${ink} level, only through`
        : `joined to the ${ink}`;
    };
    const names = all('text.road').map((text) => text.firstChild?.textContent?.trim() ?? '');
    const stops = all('path.stop').map(place);
    return stops.map((stop, index) => {
      const middle = stop.y + stop.height / 2;
      const inHeight = ({ y, height }: DOMRect, above: number, below: number) =>
        y >= middle - above && y + height <= middle + below;
      // Upright lines are the legs that all roads share.
      const own = lines.filter(({ box }) => box.width > 1 && inHeight(box, 46, 46));
      const rails = own.filter(({ box }) => box.x > stop.x - 1 && box.right < stop.right + 1);
      const [west, east] = [
        Math.min(...own.map(({ box }) => box.x)),
        Math.max(...own.map(({ box }) => box.right))
      ];
      const inside = (selector: string) =>
        all(selector)
          .map(place)
          .filter((box) => inHeight(box, 46, 46) && box.x > west + 2 && box.right < east - 2);
      const words = all('text').filter((text) => {
        const { y, height } = place(text);
        return y + height / 2 > middle - 50 && y + height / 2 < middle + 44;
      });
      return {
        road: names[index] as string,
        north: drawn(rails.filter(({ box }) => box.y < middle)),
        south: drawn(rails.filter(({ box }) => box.y > middle)),
        inks: [...new Set(own.map(({ kind }) => kind))].sort(),
        chevrons: inside('path.chevron').length,
        arrows: inside('path.arrow').length,
        words: words.map((text) => text.textContent?.trim() ?? '').join(' ')
      };
    });
  });

/** Reads the rails of a plan: road, north rail, south rail. */
export const drawnPlan = (
  svg: Locator
): Promise<readonly { readonly road: string; readonly kinds: readonly string[] }[]> =>
  svg.evaluate((picture) => {
    const kinds = ['plain', 'casing', 'hollow', 'feed', 'return', 'core'];
    const paths = [...picture.querySelectorAll('path')].flatMap((path) => {
      const kind = kinds.find((each) => path.classList.contains(each));
      const box = path.getBBox();
      return kind === undefined ? [] : [{ kind, y: box.y + box.height / 2 }];
    });
    return [...picture.querySelectorAll('circle.letter-back')].map((circle) => {
      const y = Number(circle.getAttribute('cy'));
      const near = paths.filter((path) => Math.abs(path.y - y) < 12);
      return {
        road: circle.nextElementSibling?.textContent ?? '',
        kinds: [...new Set(near.map(({ kind }) => kind))].sort()
      };
    });
  });
