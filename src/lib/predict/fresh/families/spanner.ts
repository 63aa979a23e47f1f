import type { Cause, Family, Miss } from '../family';
import { knob, LONG_MM, letters, locos, toggles, togglesSay } from '../furnish';

/** Lesson 9: metal on rails that are live or dead, or on a toggle. */
export const spanner: Family = {
  id: 'spanner',
  lesson: 9,
  draft(chance) {
    const all = letters(2 + chance.upTo(4));
    const mine = chance.pick(all);
    const { loco, placed } = locos(chance, all, mine, LONG_MM / 2);
    const switches = { ...toggles(chance, all), [mine]: true };
    const road = chance.pick(all);
    const metal = chance.odds(70) ? `rails of ${road}` : `toggle ${road}`;
    const { setting } = knob(chance);
    return {
      yard: { deckRoads: all.length, roadLengthMm: LONG_MM },
      scene: { controller: setting, switches, locos: placed },
      question: {
        do: { edits: [{ metal }] },
        compare: { speed: loco, options: ['about the same', 'slower', 'stops'] }
      },
      tells: `${loco} runs on ${mine}. ${togglesSay(switches)}`,
      ask: `A spanner falls across ${metal.startsWith('rails') ? `the ${metal}` : metal}. How does ${loco} run now?`,
      cause: cause(metal, road)
    };
  }
};

const cause =
  (metal: string, road: string) =>
  ({ answer, option }: Miss): Cause => {
    if (answer === 'stops') {
      return {
        idea: option === 'slower' ? 'M10' : 'M3',
        at: `metal on ${metal}`,
        say: 'Feed meets return at the spanner. Hardly any volts are left, for any road.'
      };
    }
    return {
      idea: 'M11',
      at: `toggle ${road}`,
      say: metal.startsWith('toggle')
        ? 'Metal on a toggle joins what its blade would join. Feed does not meet return there.'
        : `Toggle ${road} is open. No feed reaches those rails, so feed does not meet return.`
    };
  };
