import { joinWords, roads, roadTitle, switchedRoads, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { isLiveWith, liveWith } from './gap/everyday';
import { networkOf } from './gap/moments';
import { plainNetwork, type Network } from './gap/network';
import { groundOf, type Ground } from './gap/proof';
import { settingsWithout } from './gap/settings';
import { wiringOf } from './gap/wiring';
import { roadScene } from './road-scene';

/** The network of every moment, with the plug in and out. */
const networksOf = (ground: Ground): readonly Network[] =>
  ground.plugs.flatMap((plug) => {
    const plain = plainNetwork(wiringOf({ ...ground, plug, faults: [] }));
    return ground.moments.map((moment) => networkOf(plain, moment, []));
  });

/** Roads that are live in some moment though their own switch is off or they have none: all others are on, which is the worst. */
const neverOff = (yard: Yard, { controls }: Ground, networks: readonly Network[]) =>
  roads(yard).filter((road) => {
    const others = settingsWithout(controls, road);
    return networks.some((network) => others.some((setting) => isLiveWith(network, setting, road)));
  });

const alwaysOn = (yard: Yard, names: readonly string[]): Finding => ({
  grade: 'think',
  what: `${joinWords(
    names.map((road) => roadTitle(yard, road)),
    'and'
  )} can be live with no switch of ${names.length === 1 ? 'its' : 'their'} own on.`,
  where: names,
  amount: `${names.length} of ${roads(yard).length} roads`,
  why: 'A loco left there starts as soon as the knob is turned.',
  cure: 'Give each of them a switch in its feed.',
  source: 'the engine',
  board: { yard, scene: roadScene({ yard, roads: names.slice(0, 1), locos: ['Plover'] }) }
});

const off = (yard: Yard): Finding => ({
  grade: 'fine',
  what: 'Off is off: a road whose switch is off is dead, whatever else is on.',
  where: switchedRoads(yard),
  amount: `${switchedRoads(yard).length} of ${roads(yard).length} roads`,
  why: 'Tried with every other switch on, in every place of the deck, pin and plug; one more closed contact never takes a path away.',
  cure: 'Nothing to do.',
  source: 'the engine'
});

/** How many roads can be live together. */
function together(yard: Yard, { controls }: Ground, networks: readonly Network[]): Finding {
  const all = networks.flatMap((network) =>
    settingsWithout(controls).map((setting) => liveWith(network, setting))
  );
  const most = all.reduce((a, b) => (b.size > a.size ? b : a), new Set<string>());
  const names = [...most];
  return {
    grade: most.size > 1 ? 'think' : 'fine',
    what:
      most.size > 1
        ? `${most.size} roads can be live at once.`
        : 'No two roads can be live at once.',
    where: names,
    amount: `${most.size} of ${roads(yard).length} roads`,
    why: 'One knob drives every loco on a live road, and nothing tells which of them are on.',
    cure:
      most.size > 1
        ? 'Switch one road on at a time, or let a rotary selector see to it.'
        : 'Nothing to do.',
    source: 'the engine',
    board: { yard, scene: roadScene({ yard, roads: names }) }
  };
}

/** Whether off is off, and whether two roads can be live at once. */
export const offIsOff: Check = {
  id: 'off-is-off',
  title: 'Is off really off?',
  run(yard) {
    const ground = groundOf(yard);
    const networks = networksOf(ground);
    const names = neverOff(yard, ground, networks);
    return [
      ...(names.length > 0 ? [alwaysOn(yard, names)] : []),
      ...(switchedRoads(yard).some((road) => names.includes(road)) ||
      switchedRoads(yard).length === 0
        ? []
        : [off(yard)]),
      together(yard, ground, networks)
    ];
  }
};
