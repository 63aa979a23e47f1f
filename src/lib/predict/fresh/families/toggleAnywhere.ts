import type { Family } from '../family';
import { knob, letters, locos, toggles, togglesSay, wayCause } from '../furnish';

/** Lesson 3: a toggle in the feed or in the return, thrown on or off. */
export const toggleAnywhere: Family = {
  id: 'toggle-anywhere',
  lesson: 3,
  draft(chance) {
    const all = letters(2 + chance.upTo(4));
    const mine = chance.pick(all);
    const { loco, placed } = locos(chance, all, mine);
    const place = chance.pick([`return dropper ${mine}`, `feed dropper ${mine}`]);
    const switches = toggles(chance, all);
    const road = chance.odds(75) ? mine : chance.pick(all);
    const on = !switches[road];
    const { setting } = knob(chance);
    return {
      yard: { deckRoads: all.length },
      scene: {
        controller: setting,
        switches,
        locos: placed,
        edits: [{ toggle: mine, in: place }]
      },
      question: { do: { switch: { [road]: on } }, about: [loco] },
      tells: `${loco} stands on ${mine}. Toggle ${mine} sits in the ${place}. ${togglesSay(switches)}`,
      ask: `You switch road ${road} ${on ? 'on' : 'off'}. What does ${loco} do?`,
      cause: wayCause({
        holds: () => ({
          idea: 'M2',
          at: `toggle ${mine}`,
          say: `Toggle ${mine} is open. A gap anywhere in the loop stops it everywhere.`
        }),
        runs: () => ({
          idea: 'M2',
          at: `toggle ${mine}`,
          say: `Toggle ${mine} is closed, wherever it sits. The loop is whole, out and home.`
        })
      })
    };
  }
};
