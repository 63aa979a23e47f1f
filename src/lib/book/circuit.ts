import { roadsOf, wire, type Yard } from '../yard';
import { designations } from './designations';
import { loopOf, wiresText, type Loop, type LoopStep } from './loop';
import type { Sheet } from './sheet';

/** The roads that stand for all others: the first storage road, and the first stabling road. */
export const sampleLoops = (yard: Yard): readonly Loop[] =>
  (['storage', 'stabling'] as const).flatMap((sample) => {
    const road = roadsOf(yard).find(({ kind }) => kind === sample)?.name;
    return road === undefined ? [] : [loopOf(yard, road)];
  });

/** The designation of each part of a yard, by its place; no locos. */
export const namesOf = (yard: Yard): ReadonlyMap<string, string> =>
  new Map(designations(yard, wire(yard), []).map(({ place, text }) => [place, text]));

/** "wire 1, −S1 (toggle A), wire 9". */
function stepsText(steps: readonly LoopStep[], names: ReadonlyMap<string, string>): string {
  return steps
    .map((step) =>
      step.kind === 'wires'
        ? `wire${step.numbers.length > 1 ? 's' : ''} ${wiresText(step.numbers)}`
        : `${names.get(step.part.id) ?? ''} (${step.part.id})`
    )
    .join(', ');
}

/** The circuit in words: sample roads step by step, and what each designation stands for. The page draws it under this. */
export const circuit: Sheet = {
  id: 'circuit',
  title: 'Circuit diagram',
  make(yard) {
    const names = namesOf(yard);
    const shares = yard.second?.shares === 'supply';
    return {
      says: [
        'Shapes after IEC 60617, designations after IEC 81346-2. Drawn with the plug in, every switch off and the pin out. A dot joins wires; a crossing without a dot does not. Numbers beside wires are those of the schedule.',
        ...sampleLoops(yard).map(
          ({ road, out, home }) =>
            `Road ${road}, out from the feed: ${stepsText(out, names)}, feed rail. Through the loco. Home from the return rail: ${stepsText(home, names)}, return.`
        ),
        ...(shares ? ['Both controllers are fed by one supply, which is not drawn.'] : [])
      ],
      tables: [
        {
          title: 'Designations',
          columns: ['Designation', 'Part'],
          rows: [...names].map(([place, text]) => [text, place])
        }
      ]
    };
  }
};
