import { joinWords } from '../../../yard';
import type { Family } from '../family';
import { knob, letters, someLocos, standing, wayCause } from '../furnish';

/** Lesson 14: links of the common return break, in a chain or in a ring. */
export const lostLink: Family = {
  id: 'lost-link',
  lesson: 14,
  draft(chance) {
    const all = letters(3 + chance.upTo(3));
    const ring = chance.odds(50);
    const links = all.slice(1).map((road, index) => `${all[index]}-${road}`);
    const broken = chance.some(links, ring && chance.odds(60) ? 2 : 1);
    const [first, second] = chance.some(all, 2) as [string, string];
    const [one, two] = someLocos(chance, 2) as [string, string];
    const { setting } = knob(chance);
    const many = broken.length > 1;
    return {
      yard: { deckRoads: all.length, return: ring ? 'ring' : 'chain' },
      scene: {
        controller: setting,
        switches: { [first]: true, [second]: true },
        locos: { [one]: standing(chance, first), [two]: standing(chance, second) }
      },
      question: {
        do: { edits: broken.map((link) => ({ off: `loop link ${link}` })) },
        about: [one, two]
      },
      tells: `The return is a ${ring ? 'ring' : 'chain'}. ${one} runs on ${first}, ${two} on ${second}.`,
      ask: `The loop link${many ? 's' : ''} ${joinWords(broken, 'and')} break${many ? '' : 's'}. What do ${one} and ${two} do?`,
      cause: wayCause({
        holds: ({ id, open = `loop link ${broken[0]}` }) => ({
          idea: ring ? 'M14' : 'M19',
          at: open,
          say: `${id} has lost every way home: look at ${open}. Both its rails go up to feed level.`
        }),
        runs: ({ id }) => ({
          idea: ring ? 'M14' : 'M3',
          at: id,
          say: `${id} still has a whole way home${ring ? ', one way round the ring' : ', by the links nearer the start'}.`
        })
      })
    };
  }
};
