import type { Point } from './geometry';

/** Widths of lines on paper, mm. Source: ISO 128-2, series of line widths; from memory. */
const pens = { hair: 0.18, thin: 0.25, line: 0.35, thick: 0.5, bold: 0.7, road: 1.4 } as const;

interface Drawn {
  readonly pen?: keyof typeof pens;
  readonly dashed?: boolean;
  readonly fill?: 'none' | 'paper' | 'ink';
}

/** A piece of a drawing; lengths in mm, angles in degrees. */
export type Shape =
  | (Drawn & { readonly kind: 'path'; readonly d: string })
  | (Drawn &
      Point & {
        readonly kind: 'circle';
        readonly r: number;
        /** What it stands for, for whoever reads the file. */
        readonly place?: string;
      })
  | (Point & {
      readonly kind: 'text';
      readonly text: string;
      readonly size: number;
      readonly anchor?: 'start' | 'middle' | 'end';
      readonly bold?: boolean;
    })
  /** Shapes with a place, a turn and a scale of their own. */
  | (Point & {
      readonly kind: 'group';
      readonly turn?: number;
      readonly scale?: number;
      readonly shapes: readonly Shape[];
    })
  /** A window onto another drawing, at the same scale: nothing outside it shows. */
  | (Point & {
      readonly kind: 'window';
      readonly width: number;
      readonly height: number;
      readonly from: Point;
      readonly shapes: readonly Shape[];
    });

/** A drawing on paper, mm. */
export interface Drawing {
  /** Name for its file. */
  readonly id: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;'
};

/** Text as XML may have it. Source: XML 1.0 (fifth edition), 2.2 and 2.4. */
const escaped = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '\ufffd')
    .replace(/[&<>"]/g, (mark) => escapes[mark] as string);

/** A length to a thousandth of a millimetre. */
const mm = (length: number): string => String(Number(length.toFixed(3)));

const fills = { none: 'none', paper: '#fff', ink: '#000' } as const;

/** Lines are as wide inside a scaled group as outside. */
function look({ pen, dashed, fill = 'none' }: Drawn, scale: number): string {
  const stroke = pen ? ` stroke="#000" stroke-width="${mm(pens[pen] / scale)}"` : '';
  const dashes = dashed ? ` stroke-dasharray="${mm(1.5 / scale)} ${mm(1 / scale)}"` : '';
  return ` fill="${fills[fill]}"${stroke}${dashes}`;
}

function shapeText(shape: Shape, scale = 1): string {
  if (shape.kind === 'path') return `<path d="${shape.d}"${look(shape, scale)}/>`;
  const at = `x="${mm(shape.x)}" y="${mm(shape.y)}"`;
  if (shape.kind === 'circle') {
    const place = shape.place === undefined ? '' : ` data-place="${escaped(shape.place)}"`;
    return `<circle cx="${mm(shape.x)}" cy="${mm(shape.y)}" r="${mm(shape.r)}"${place}${look(shape, scale)}/>`;
  }
  if (shape.kind === 'text') {
    const { size, anchor = 'start', bold = false, text } = shape;
    return `<text ${at} font-size="${mm(size)}" text-anchor="${anchor}"${bold ? ' font-weight="700"' : ''} stroke="#fff" stroke-width="${mm(size / 2.4)}" stroke-linejoin="round" paint-order="stroke">${escaped(text)}</text>`;
  }
  if (shape.kind === 'group') {
    const { x, y, turn = 0, scale: own = 1 } = shape;
    const inside = shape.shapes.map((each) => shapeText(each, scale * own)).join('');
    return `<g transform="translate(${mm(x)} ${mm(y)}) rotate(${turn}) scale(${own})">${inside}</g>`;
  }
  const { width, height, from } = shape;
  const inside = shape.shapes.map((each) => shapeText(each, scale)).join('');
  return `<svg ${at} width="${mm(width)}" height="${mm(height)}" viewBox="${mm(from.x)} ${mm(from.y)} ${mm(width)} ${mm(height)}">${inside}</svg>`;
}

/** A drawing as an SVG file at full size: its width and height in mm, one unit a millimetre. */
export const svgOf = ({ title, width, height, shapes }: Drawing): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" font-family="'Atkinson Hyperlegible Next', Arial, sans-serif"><title>${escaped(title)}</title><rect width="${mm(width)}" height="${mm(height)}" fill="#fff"/>${shapes.map((shape) => shapeText(shape)).join('')}</svg>`;

/** A path along corners. */
export const lineOf = (...points: readonly Point[]): string =>
  points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${mm(x)} ${mm(y)}`).join('');

/** A path round a box. */
export const boxOf = (x: number, y: number, width: number, height: number): string =>
  `M${mm(x)} ${mm(y)}h${mm(width)}v${mm(height)}h${mm(-width)}z`;
