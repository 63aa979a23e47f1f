import { inch, panelParts, type PanelPartKind } from '../tables';
import type { Yard } from '../yard';
import { panelFace } from './panelFace';
import type { Sheet } from './sheet';

const inches = (mm: number): string => (mm / 1000 / inch).toFixed(3);

/** The hole for a part of the panel, in both measures: "6.4 mm (0.252 in)". */
export const holeText = (kind: PanelPartKind): string => {
  const { holeMm } = panelParts[kind];
  return `${holeMm} mm (${inches(holeMm)} in)`;
};

/** Where every hole of the panel goes. The page draws the face and its back under it. */
export const panel: Sheet = {
  id: 'panel',
  title: 'Panel face',
  make(yard: Yard) {
    const { width, height, holes } = panelFace(yard);
    return {
      says: [
        `The panel is ${width} mm wide and ${height} mm high (${inches(width)} × ${inches(height)} in). The controller stays in its own case.`,
        'Print at 100 %, then lay a steel rule on the two bars: 100 mm and 4 in. A sheet whose bars are not right is no template.',
        'Holes are common practice, room for bodies from memory: measure your own parts before you drill. Clamp the panel on waste wood, and shield your eyes.'
      ],
      tables: [
        {
          title: 'Holes',
          columns: [
            'Hole',
            'For',
            'Drill, mm',
            'Drill, in',
            'From west edge, mm',
            'From west edge, in',
            'From top edge, mm',
            'From top edge, in',
            'Drilled'
          ],
          rows: holes.map(({ number, place, holeMm, x, y }) => [
            number,
            place,
            holeMm,
            inches(holeMm),
            x,
            inches(x),
            y,
            inches(y),
            ''
          ])
        }
      ]
    };
  }
};
