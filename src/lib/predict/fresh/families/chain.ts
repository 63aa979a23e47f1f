import type { Chance } from '../chance';
import type { Draft, Family } from '../family';
import { knob, someLocos, standing, wayCause } from '../furnish';

/** The links of a road's chain as they stand, and what is done to one of them. */
interface Links {
  readonly road: string;
  readonly scene: Draft['scene'];
  readonly todo: NonNullable<Draft['question']['do']>;
  readonly tells: string;
  readonly done: string;
}

const onOff = (on: boolean): string => (on ? 'on' : 'off');

/** A stabling road: its toggle, and the pin home in its own hole. */
function stabling(chance: Chance, count: number): Links {
  const road = String(1 + chance.upTo(count));
  const hole = chance.odds(70) ? road : String(1 + chance.upTo(count));
  const home = chance.odds(50);
  const on = chance.odds(75);
  const throws = home && chance.odds(60);
  return {
    road,
    scene: { deck: hole, pin: home ? 'home' : 'out', switches: { [road]: on } },
    todo: throws ? { switch: { [road]: !on } } : { pin: home ? 'out' : 'home' },
    tells: `The pin is ${home ? 'home' : 'out'} at hole ${hole}. Toggle ${road} is ${onOff(on)}.`,
    done: throws
      ? `You switch road ${road} ${onOff(!on)}.`
      : `You ${home ? 'pull the pin' : 'push the pin home'}.`
  };
}

/** A deck road: its toggle and the plug; the pin plays no part. */
function onDeck(chance: Chance, road: string): Links {
  const out = chance.odds(50);
  const on = chance.odds(70);
  const throws = chance.odds(50);
  const pin = chance.pick(['home', 'out'] as const);
  return {
    road,
    scene: { deck: '1', pin, plug: out ? 'out' : 'in', switches: { [road]: on } },
    todo: throws ? { switch: { [road]: !on } } : { plug: out ? 'in' : 'out' },
    tells: `The plug is ${out ? 'out' : 'in'}, the pin is ${pin}. Toggle ${road} is ${onOff(on)}.`,
    done: throws
      ? `You switch road ${road} ${onOff(!on)}.`
      : `You ${out ? 'put the plug in' : 'pull the plug'}.`
  };
}

/** Lesson 11: pin, plug and toggle, each a link of the chain. */
export const chain: Family = {
  id: 'chain',
  lesson: 11,
  draft(chance) {
    const stablingRoads = 1 + chance.upTo(3);
    const deckRoads = stablingRoads + chance.upTo(2);
    const onStabling = chance.odds(60);
    const links = onStabling
      ? stabling(chance, stablingRoads)
      : onDeck(chance, chance.pick([...[...'ABCD'].slice(0, deckRoads), 'R']));
    const { road, scene, todo } = links;
    const [loco] = someLocos(chance, 1) as [string];
    const { setting } = knob(chance);
    const at = onStabling
      ? { road, faces: chance.pick(['west', 'east'] as const) }
      : standing(chance, road);
    return {
      yard: { deckRoads, stablingRoads, runningRoad: 'none' },
      scene: { ...scene, controller: setting, locos: { [loco]: at } },
      question: { do: todo, about: [loco] },
      tells: `${loco} stands on ${road}. ${links.tells}`,
      ask: `${links.done} What does ${loco} do?`,
      cause: wayCause({
        holds: ({ open = `toggle ${road}` }) => ({
          idea: 'M16',
          at: open,
          say: `The chain of road ${road} is open at ${open}. One missing link is enough.`
        }),
        runs: () => ({
          idea: onStabling ? 'M16' : 'M20',
          at: `toggle ${road}`,
          say: onStabling
            ? `Pin contact ${road} and toggle ${road} are both closed. The chain is whole.`
            : `Toggle ${road} is closed and the plug is in. A deck road needs no pin.`
        })
      }),
      show: ['rows', 'plan']
    };
  }
};
