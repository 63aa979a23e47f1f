import { panelFace, plugsOf } from '../book';
import type { Yard } from '../yard';
import { circuitStrip } from './circuitStrip';
import type { Drawing } from './drawing';
import { lampStrips } from './lampStrip';
import { loopDrawing } from './loopDrawing';
import { panelBack, panelFront } from './panelSheets';
import { plugFaces } from './plugFaces';
import { sheetsOf } from './strips';
import { tilesOf } from './tiles';

/** A drawing of the wiring book, and the pages it is printed on. */
export interface BookDrawing {
  readonly whole: Drawing;
  readonly pages: readonly Drawing[];
}

const onOnePage = (whole: Drawing): BookDrawing => ({ whole, pages: [whole] });
const tiled = (whole: Drawing): BookDrawing => ({ whole, pages: tilesOf(whole) });

function panelDrawings(yard: Yard): readonly BookDrawing[] {
  const face = panelFace(yard);
  return [tiled(panelFront(face, yard.name)), tiled(panelBack(face))];
}

const plugDrawings = (yard: Yard): readonly BookDrawing[] =>
  plugsOf(yard).map((plug, index, all) => onOnePage(plugFaces(plug, index, all.length)));

const circuitDrawings = (yard: Yard): readonly BookDrawing[] =>
  [loopDrawing(yard), ...[circuitStrip(yard), ...lampStrips(yard)].flatMap(sheetsOf)].map(
    onOnePage
  );

/** The drawings under each sheet of the wiring book, by the sheet's id. */
const bySheet: Readonly<Record<string, (yard: Yard) => readonly BookDrawing[]>> = {
  circuit: circuitDrawings,
  panel: panelDrawings,
  plug: plugDrawings
};

/** The drawings that belong to a sheet of the wiring book; most sheets have none. */
export const bookDrawings = (sheet: string, yard: Yard): readonly BookDrawing[] =>
  bySheet[sheet]?.(yard) ?? [];
