import { editWords, sentence } from '../../../yard';
import type { Family } from '../family';
import { knob, letters, locos, wayCause } from '../furnish';

/** Lesson 1: both droppers of a road on one leg. */
export const oneInk: Family = {
  id: 'one-ink',
  lesson: 1,
  draft(chance) {
    const all = letters(2 + chance.upTo(4));
    const mine = chance.pick(all);
    const { loco, placed } = locos(chance, all, mine);
    const other = chance.pick(all.filter((road) => road !== mine));
    const road = chance.odds(50) ? mine : other;
    const to = chance.pick(['feed', 'return'] as const);
    const move = `${to === 'feed' ? 'return' : 'feed'} dropper ${road}`;
    const { setting, way } = knob(chance);
    return {
      yard: { deckRoads: all.length, switching: 'none' },
      scene: { locos: placed, edits: [{ move, to }] },
      question: { do: { controller: setting }, about: [loco] },
      tells: `${loco} stands on road ${mine}. ${sentence(editWords({ move, to }))}`,
      ask: `You turn the knob ${way}. What does ${loco} do?`,
      cause: wayCause({
        holds: () => ({
          idea: 'M6',
          at: move,
          say: `Both rails have the ${to}'s ink. One ink on both sides: no volts across ${loco}.`
        }),
        runs: () => ({
          idea: 'M3',
          at: loco,
          say: `Only road ${other} has one ink on both rails. Row ${mine} is whole, out and home.`
        })
      })
    };
  }
};
