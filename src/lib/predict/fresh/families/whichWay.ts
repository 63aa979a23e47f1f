import type { Edit } from '../../../yard';
import type { Family } from '../family';
import { knob, letters, locos, wayCause } from '../furnish';

const swap = (road: string): readonly Edit[] => [
  { move: `feed dropper ${road}`, to: 'return' },
  { move: `return dropper ${road}`, to: 'feed' }
];

/** Lesson 7: rails decide the way, not the nose; droppers may be swapped. */
export const whichWay: Family = {
  id: 'which-way',
  lesson: 7,
  draft(chance) {
    const all = letters(2 + chance.upTo(4));
    const mine = chance.pick(all);
    const { loco, placed } = locos(chance, all, mine);
    const road = chance.odds(60) ? mine : chance.pick(all);
    const { setting, way } = knob(chance);
    const whole = () => ({
      idea: 'M13',
      at: loco,
      say: `Row ${mine} is whole. Swapped wires turn a loop round; they do not open it.`
    });
    return {
      yard: { deckRoads: all.length, switching: 'none' },
      scene: { locos: placed, edits: [...swap(road)] },
      question: { do: { controller: setting }, about: [loco] },
      tells: `${loco} stands on ${mine} and faces ${placed[loco]?.faces}. The two droppers of road ${road} are swapped.`,
      ask: `You turn the knob ${way}. What does ${loco} do?`,
      cause: wayCause({ holds: whole, runs: whole })
    };
  }
};
