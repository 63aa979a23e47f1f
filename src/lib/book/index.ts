import { circuit } from './circuit';
import { front } from './front';
import { faultLog, logColumns, logPage, logRow } from './log';
import { operator } from './operator';
import { panel } from './panel';
import { parts } from './parts';
import { plug } from './plug';
import { schedule } from './schedule';
import type { Sheet } from './sheet';
import { testCard } from './testCard';

/** Every sheet of the wiring book, in its order; a new one is one file and one name here. */
export const sheets: readonly Sheet[] = [
  front,
  circuit,
  schedule,
  plug,
  parts,
  panel,
  testCard,
  operator,
  faultLog
];

export { namesOf, sampleLoops } from './circuit';
export { contactPlaces } from './contactRows';
export { designations } from './designations';
export { panelFace, type Hole, type PanelFace } from './panelFace';
export { plugsOf, type Plug, type PlugContact } from './plug';
export { wiresText, type Loop, type LoopStep } from './loop';
export { changesSince, printedWires, type Changes, type Renumbered } from './revision';
export { schedule };
export { type Page, type Sheet, type Table } from './sheet';
export { colourText } from './colours';
export { cardOf, cardSteps, type Card, type CardLine } from './card/card';
export { differs } from './card/line';
export { logColumns, logPage, logRow };
export { operator };
export { typedValue, verdictOf } from './card/verdict';
export { byHand, cardPage, readingText, testCard } from './testCard';
export { cutM, wiresOf, type Wire } from './wires';
