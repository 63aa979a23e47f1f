import type { Family } from '../family';
import { knob, letters, someLocos, standing, toggles, togglesSay, wayCause } from '../furnish';

/** Lesson 4: which locos move with so many switches. */
export const whoMoves: Family = {
  id: 'who-moves',
  lesson: 4,
  draft(chance) {
    const all = letters(3 + chance.upTo(4));
    const [first, second] = chance.some(all, 2) as [string, string];
    const [one, two] = someLocos(chance, 2) as [string, string];
    const roadOf: Readonly<Record<string, string>> = { [one]: first, [two]: second };
    const switches = toggles(chance, all);
    const road = chance.pick(all);
    const on = !switches[road];
    const { setting } = knob(chance);
    return {
      yard: { deckRoads: all.length },
      scene: {
        controller: setting,
        switches,
        locos: { [one]: standing(chance, first), [two]: standing(chance, second) }
      },
      question: { do: { switch: { [road]: on } }, about: [one, two] },
      tells: `${one} stands on ${first}, ${two} on ${second}. ${togglesSay(switches)}`,
      ask: `You switch road ${road} ${on ? 'on' : 'off'}. What do ${one} and ${two} do?`,
      cause: wayCause({
        holds: ({ id }) => ({
          idea: 'M9',
          at: `toggle ${roadOf[id]}`,
          say: `Toggle ${roadOf[id]} is open. Both of ${id}'s rails have the return's ink.`
        }),
        runs: ({ id }) => ({
          idea: 'M12',
          at: `toggle ${roadOf[id]}`,
          say: `Toggle ${roadOf[id]} is closed. Row ${roadOf[id]} is whole, and it needs no other row.`
        })
      }),
      show: ['rows', 'plan']
    };
  }
};
