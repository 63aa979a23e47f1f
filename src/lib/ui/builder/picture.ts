import type { Size } from '../picture';

/** What of a drawing's look is written into a picture, so that it stands without this page. */
const looks = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-family',
  'font-size',
  'font-weight',
  'font-style',
  'text-anchor',
  'paint-order'
];

const SVG = 'http://www.w3.org/2000/svg';
const GAP = 16;
const TITLE = 40;

/** A copy of a drawing that carries its own look. */
function plain(drawing: SVGSVGElement): SVGSVGElement {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const from = [drawing, ...drawing.querySelectorAll('*')];
  const to = [copy, ...copy.querySelectorAll('*')];
  to.forEach((element, index) => {
    const look = getComputedStyle(from[index] as Element);
    for (const name of looks) {
      const value = look.getPropertyValue(name);
      if (value) element.setAttribute(name, value);
    }
    element.removeAttribute('class');
    element.removeAttribute('style');
  });
  return copy;
}

/** A picture as text, with its size. */
export interface Picture extends Size {
  readonly svg: string;
}

/** One picture of several drawings, one under the other, under a title. */
export function pictureOf(title: string, drawings: readonly SVGSVGElement[]): Picture {
  const sizes = drawings.map(({ viewBox }) => viewBox.baseVal);
  const width = Math.max(...sizes.map((box) => box.width)) + 2 * GAP;
  const whole = document.createElementNS(SVG, 'svg');
  const look = getComputedStyle(document.body);
  const sheet = document.createElementNS(SVG, 'rect');
  sheet.setAttribute('width', '100%');
  sheet.setAttribute('height', '100%');
  sheet.setAttribute('fill', look.backgroundColor);
  const heading = document.createElementNS(SVG, 'text');
  heading.setAttribute('x', String(GAP));
  heading.setAttribute('y', '28');
  heading.setAttribute('font-family', look.fontFamily);
  heading.setAttribute('font-size', '18');
  heading.setAttribute('font-weight', '700');
  heading.setAttribute('fill', look.color);
  heading.textContent = title;
  whole.append(sheet, heading);
  let y = TITLE;
  drawings.forEach((drawing, index) => {
    const copy = plain(drawing);
    copy.setAttribute('x', String(GAP));
    copy.setAttribute('y', String(y));
    whole.append(copy);
    y += (sizes[index]?.height ?? 0) + GAP;
  });
  whole.setAttribute('xmlns', SVG);
  whole.setAttribute('width', String(width));
  whole.setAttribute('height', String(y));
  whole.setAttribute('viewBox', `0 0 ${width} ${y}`);
  return { svg: new XMLSerializer().serializeToString(whole), width, height: y };
}
