import { editWords, sentence } from '../../../yard';
import type { Family } from '../family';
import { knob, letters, locos, wayCause } from '../furnish';

/** Lesson 1: a wire is off, on the loco's own road or on another. */
export const brokenReturn: Family = {
  id: 'broken-return',
  lesson: 1,
  draft(chance) {
    const all = letters(2 + chance.upTo(4));
    const mine = chance.pick(all);
    const { loco, placed } = locos(chance, all, mine);
    const other = chance.pick(all.filter((road) => road !== mine));
    const off = chance.odds(50)
      ? chance.pick([`return dropper ${mine}`, `return dropper ${mine}`, `feed dropper ${mine}`])
      : chance.pick([
          `return dropper ${other}`,
          `return dropper ${other}`,
          `feed dropper ${other}`
        ]);
    const { setting, way } = knob(chance);
    return {
      yard: { deckRoads: all.length, switching: 'none' },
      scene: { locos: placed, edits: [{ off }] },
      question: { do: { controller: setting }, about: [loco] },
      tells: `${loco} stands on road ${mine}. ${sentence(editWords({ off }))}`,
      ask: `You turn the knob ${way}. What does ${loco} do?`,
      cause: wayCause({
        holds: ({ open = off }) => ({
          idea: 'M5',
          at: open,
          say: `The loop is open at ${open}. Without a way out and home, nothing flows at all.`
        }),
        runs: () => ({
          idea: 'M3',
          at: loco,
          say: `The wire that is off serves road ${other} only. Row ${mine} is whole, out and home.`
        })
      })
    };
  }
};
