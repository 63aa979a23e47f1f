import type { Family } from '../family';
import { knob, letters, locos, toggles, togglesSay, wayCause } from '../furnish';

/** Lesson 3: metal across the studs of a toggle. */
export const metalOnStuds: Family = {
  id: 'metal-on-studs',
  lesson: 3,
  draft(chance) {
    const all = letters(2 + chance.upTo(4));
    const mine = chance.pick(all);
    const { loco, placed } = locos(chance, all, mine);
    const switches = { ...toggles(chance, all), [mine]: chance.odds(20) };
    const other = chance.pick(all.filter((road) => road !== mine));
    const road = chance.odds(45) ? mine : other;
    const { setting } = knob(chance);
    return {
      yard: { deckRoads: all.length },
      scene: { controller: setting, switches, locos: placed },
      question: { do: { edits: [{ metal: `toggle ${road}` }] }, about: [loco] },
      tells: `${loco} stands on ${mine}. ${togglesSay(switches)}`,
      ask: `A spanner falls and lies across toggle ${road}. What does ${loco} do?`,
      cause: wayCause({
        holds: () => ({
          idea: 'M16',
          at: `toggle ${mine}`,
          say: `The spanner lies on toggle ${road}. Toggle ${mine} is still open, and so is its loop.`
        }),
        runs: () => ({
          idea: 'M11',
          at: `toggle ${road}`,
          say: `Metal on the studs of a toggle is no short. Row ${mine} is whole, out and home.`
        })
      })
    };
  }
};
