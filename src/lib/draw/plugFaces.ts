import { contactPlaces, type Plug, type PlugContact } from '../book';
import { lineOf, type Drawing, type Shape } from './drawing';
import { page } from './tiles';

/** Step from contact to contact at most, and room at the sides, mm. */
const STEP = 15;
const SIDE = 8;
/** Room above a face for its words, and under a contact for what it carries. */
const WORDS = 9;
const CARRIES = 4.6;

const sides = [
  { words: 'MATING SIDE: the contacts point at you', sign: 1 },
  { words: 'SOLDER SIDE: the wires come at you', sign: -1 }
] as const;

const carriesText = ({ carries, road }: PlugContact): string =>
  carries === 'feed' ? (road ?? '') : carries;

/** A contact: the return with a second ring, a spare one dashed. */
function contact(one: PlugContact, x: number, y: number, r: number): readonly Shape[] {
  const spare = one.carries === 'spare';
  return [
    {
      kind: 'circle',
      x,
      y,
      r,
      pen: spare ? 'thin' : 'line',
      dashed: spare,
      fill: 'paper',
      place: one.place ?? `spare ${one.number}`
    },
    ...(one.carries === 'return'
      ? [{ kind: 'circle' as const, x, y, r: r - 0.7, pen: 'thin' as const }]
      : []),
    { kind: 'text', x, y: y + 1, size: 2.8, anchor: 'middle', text: String(one.number) },
    {
      kind: 'text',
      x,
      y: y + r + 3.2,
      size: one.carries === 'feed' ? 3.2 : 2.4,
      anchor: 'middle',
      bold: one.carries !== 'spare',
      text: carriesText(one)
    }
  ];
}

/** A plug's faces, enlarged: its mating side, and its solder side as the mirror of it. */
export function plugFaces(plug: Plug, index: number, of: number): Drawing {
  const places = contactPlaces(plug.size);
  const widest = Math.max(...places.map(({ x }) => x));
  const step = Math.min((page.width - 2 * SIDE) / (2 * widest + 1), STEP);
  const r = Math.min(step * 0.36, 4);
  const gap = 2 * r + CARRIES + 1;
  const rows = Math.max(...places.map(({ row }) => row)) + 1;
  const [half, tall] = [(widest + 0.5) * step + SIDE / 2, rows * gap + 4];
  const middle = page.width / 2;
  const shapes = sides.flatMap(({ words, sign }, side): readonly Shape[] => {
    const top = 10 + side * (tall + WORDS + 6) + WORDS;
    const narrow = half - 3;
    return [
      { kind: 'text', x: middle, y: top - 3, size: 4, anchor: 'middle', bold: true, text: words },
      {
        kind: 'path',
        d: `${lineOf(
          { x: middle - half, y: top },
          { x: middle + half, y: top },
          { x: middle + narrow, y: top + tall },
          { x: middle - narrow, y: top + tall }
        )}z`,
        pen: 'thick'
      },
      ...places.flatMap(({ number, x, row }) =>
        contact(
          plug.contacts[number - 1] as PlugContact,
          middle + sign * x * step,
          top + 3 + r + row * gap,
          r
        )
      )
    ];
  });
  const name = of > 1 ? `Plug ${index + 1}` : 'Plug';
  const title = `${name} of ${plug.size} contacts, both sides, enlarged`;
  return {
    id: of > 1 ? `plug-${index + 1}` : 'plug',
    title,
    width: page.width,
    height: 10 + 2 * (tall + WORDS + 6),
    shapes: [{ kind: 'text', x: 0.5, y: 4.2, size: 3.6, text: title, bold: true }, ...shapes]
  };
}
