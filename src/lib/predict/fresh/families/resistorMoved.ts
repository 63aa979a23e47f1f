import { editWords, sentence } from '../../../yard';
import type { Cause, Family, Miss } from '../family';
import { knob, letters, LONG_MM, standing, someLocos } from '../furnish';

const wiresOf = (road: string) => [
  'feed wire',
  `feed dropper ${road}`,
  `return dropper ${road}`,
  'return wire'
];

/** Lesson 2: a resistor is moved, joined by a second one, or taken out. */
export const resistorMoved: Family = {
  id: 'resistor-moved',
  lesson: 2,
  draft(chance) {
    const [loco] = someLocos(chance, 1) as [string];
    const all = letters(1 + chance.upTo(4));
    const mine = chance.pick(all);
    const wires = wiresOf(mine);
    const [first, second] = chance.pick([
      chance.some(wires, 2),
      [...chance.some(wires, 2)].reverse()
    ]) as [string, string];
    const old = { resistor: 8 + chance.upTo(8), in: first };
    const change = chance.pick(['move', 'add', 'take'] as const);
    const edits = {
      move: [{ ...old, in: second }],
      add: [old, { ...old, in: second }],
      take: []
    }[change];
    const done = {
      move: `It is moved to the ${second}.`,
      add: `A second one like it is put in the ${second}.`,
      take: 'It is taken out, and the wire joined again.'
    }[change];
    const { setting, way } = knob(chance);
    return {
      yard: { deckRoads: all.length, switching: 'none', roadLengthMm: LONG_MM },
      scene: {
        controller: setting,
        locos: { [loco]: standing(chance, mine, LONG_MM / 2) },
        edits: [old]
      },
      question: {
        do: { edits },
        compare: { speed: loco, options: ['slower', 'about the same', 'faster'] }
      },
      tells: `${loco} runs ${way} on ${mine}. ${sentence(editWords(old))}`,
      ask: `${done} How does ${loco} run now?`,
      cause: cause(loco)
    };
  }
};

const cause =
  (at: string) =>
  ({ answer }: Miss): Cause => {
    const say = {
      'about the same':
        'The flow is set by the whole loop. A resistor counts the same anywhere in it.',
      slower: 'Both resistors are in the one loop, so both count, wherever they sit.',
      faster: 'It held the flow back from any place in the loop. Now nothing does.'
    }[answer] as string;
    return { idea: 'M2', at, say };
  };
