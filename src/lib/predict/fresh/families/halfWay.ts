import type { Family } from '../family';
import { knob, letters, someLocos, standing, wayCause } from '../furnish';

/** Lesson 13: a loco on the running road, and the deck between its stops or at one. */
export const halfWay: Family = {
  id: 'half-way',
  lesson: 13,
  draft(chance) {
    const all = letters(2 + chance.upTo(4));
    const guarded = chance.odds(60);
    const stop = chance.odds(guarded ? 65 : 35) ? chance.pick(all) : undefined;
    const deck = stop ?? -(30 + 60 * chance.upTo(all.length - 1));
    const on = chance.odds(70);
    const [loco, other] = someLocos(chance, 2) as [string, string];
    const free = chance.pick(all.filter((road) => road !== stop));
    const { setting, way } = knob(chance);
    const feed = guarded
      ? `Road Q has its feed through the pin's contact and toggle Q, which is ${on ? 'on' : 'off'}.`
      : 'Road Q is fed straight.';
    return {
      yard: {
        deckRoads: all.length,
        stablingRoads: 1 + chance.upTo(2),
        runningRoad: guarded ? 'interlocked' : 'direct'
      },
      scene: {
        deck,
        switches: guarded ? { Q: on } : {},
        locos: {
          [loco]: {
            road: 'Q',
            atMm: 1600 + 25 * chance.upTo(21),
            faces: chance.pick(['west', 'east'] as const)
          },
          [other]: standing(chance, free)
        }
      },
      question: { do: { controller: setting }, about: [loco] },
      tells: `${feed} ${stop ? `Deck road ${stop} faces it, pin home.` : 'The deck is between its stops.'}`,
      ask: `You turn the knob ${way}. What does ${loco} on Q do?`,
      cause: wayCause({
        holds: ({ open = 'feed dropper Q' }) => ({
          idea: 'M16',
          at: open,
          say: `Road Q's feed goes through the pin's contact and toggle Q. It is open at ${open}.`
        }),
        runs: () => ({
          idea: 'M20',
          at: 'feed dropper Q',
          say: guarded
            ? 'The pin is home at a running stop and toggle Q is on. The chain is whole.'
            : 'Road Q is fed straight from the controller. Nothing in it asks where the deck stands.'
        })
      }),
      show: ['plan', 'rows']
    };
  }
};
