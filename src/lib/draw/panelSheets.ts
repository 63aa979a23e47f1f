import type { Hole, PanelFace } from '../book';
import { boxOf, lineOf, type Drawing, type Shape } from './drawing';

const outline = ({ width, height }: PanelFace): Shape => ({
  kind: 'path',
  d: boxOf(0.2, 0.2, width - 0.4, height - 0.4),
  pen: 'line'
});

/** Which edge is which, written along both. */
const ends = ({ width }: PanelFace, [first, last]: readonly [string, string]): readonly Shape[] => [
  { kind: 'text', x: 14, y: 11, size: 3, text: first },
  { kind: 'text', x: width - 14, y: 11, size: 3, anchor: 'end', text: last }
];

/** A hole with the cross that a centre punch is set on. */
function hole({ place, x, y, holeMm }: Hole): readonly Shape[] {
  const reach = holeMm / 2 + 1.5;
  return [
    { kind: 'circle', place, x, y, r: holeMm / 2, pen: 'thin', fill: 'paper' },
    {
      kind: 'path',
      d: `${lineOf({ x: x - reach, y }, { x: x + reach, y })}${lineOf({ x, y: y - reach }, { x, y: y + reach })}`,
      pen: 'hair'
    }
  ];
}

/** The panel's front at full size: track diagram, holes, words. */
export const panelFront = (face: PanelFace, name: string): Drawing => ({
  id: 'panel-face',
  title: 'Panel face, from the front',
  width: face.width,
  height: face.height,
  shapes: [
    outline(face),
    { kind: 'text', x: face.width / 2, y: 12, size: 6, anchor: 'middle', bold: true, text: name },
    {
      kind: 'path',
      d: boxOf(face.deck.x, face.deck.y, face.deck.width, face.deck.height),
      pen: 'hair',
      dashed: true
    },
    ...face.roads.map(({ west, east, y }): Shape => ({
      kind: 'path',
      d: lineOf({ x: west, y }, { x: east, y }),
      pen: 'road'
    })),
    ...ends(face, ['WEST', 'EAST']),
    ...face.holes.flatMap(hole),
    ...face.texts.map((text): Shape => ({ kind: 'text', bold: true, ...text }))
  ]
});

/** The panel's back at full size, mirrored: every hole with its number, its drill, and the room its part takes. */
export const panelBack = (face: PanelFace): Drawing => ({
  id: 'panel-back',
  title: 'Panel, drilling sheet for the back (mirrored)',
  width: face.width,
  height: face.height,
  shapes: [
    outline(face),
    {
      kind: 'text',
      x: face.width / 2,
      y: 11,
      size: 4,
      anchor: 'middle',
      bold: true,
      text: 'BACK OF THE PANEL, mirrored'
    },
    ...ends(face, ['EAST', 'WEST']),
    ...face.holes.flatMap((each): readonly Shape[] => {
      const x = Number((face.width - each.x).toFixed(1));
      const { width, height } = each.bodyMm;
      return [
        {
          kind: 'path',
          d: boxOf(x - width / 2, each.y - height / 2, width, height),
          pen: 'hair',
          dashed: true
        },
        ...hole({ ...each, x }),
        {
          kind: 'text',
          x: x + each.holeMm / 2 + 0.6,
          y: each.y - each.holeMm / 2 + 0.4,
          size: 2.8,
          bold: true,
          text: String(each.number)
        }
      ];
    })
  ]
});
