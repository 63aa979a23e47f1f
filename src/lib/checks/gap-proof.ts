import {
  holes,
  liveRoads,
  read,
  roadNamed,
  roads,
  roadTitle,
  travel,
  voltsText,
  type Yard
} from '../yard';
import type { Check, Finding } from './finding';
import { designChanges, type DesignChange } from './design-changes';
import { breachScene, provedScene } from './gap/board';
import { groundOf, proveGap, statesOf, type Breach, type GapProof, type States } from './gap/proof';
import { assumptions, breachWords, countText, statesWords, unsafeText } from './gap/words';
import { listed } from './listed';

/** The change that closes this end for good, as the proof of the changed yard says. */
const cureOf = (breach: Breach, tried: readonly (DesignChange & { readonly proof: GapProof })[]) =>
  tried.find(
    ({ proof }) =>
      !proof.breaches.some(({ road, end }) => road === breach.road && end === breach.end)
  );

/** Whether it needs a deck that creeps: a deck road, out of line, the pin out. */
const creeps = (yard: Yard, { pin, road }: Breach): boolean =>
  pin === 'out' && roadNamed(yard, road).bed === 'deck';

interface Told {
  readonly breach: Breach;
  readonly cure: DesignChange | undefined;
  /** How many states are unsafe, in words. */
  readonly count: string;
}

function breachFinding(yard: Yard, { breach, cure, count }: Told): Finding {
  const scene = breachScene(yard, breach);
  const starts = liveRoads(yard, scene).has(breach.road);
  const { between } = read(yard, scene);
  const volts = between(`feed rail ${breach.road}`, `return rail ${breach.road}`) ?? 0;
  return {
    grade: starts ? 'must fix' : 'think',
    what: `Road ${roadTitle(yard, breach.road)} can be live while its ${breach.end} end faces nothing: ${breachWords(yard, breach)}.`,
    where: [breach.road],
    amount: `${voltsText(volts)} on its rails, ${starts ? 'enough to start a loco' : 'less than starts a loco'}; ${count} are unsafe`,
    why: 'A loco driven there falls into the gap.',
    cure:
      cure?.words ??
      `Put a stop at the ${breach.end} end of ${roadTitle(yard, breach.road)}, closed whenever nothing faces it.`,
    ...(cure ? { change: cure.change } : {}),
    source: 'the engine',
    board: { yard, scene }
  };
}

/** Deck roads whose ends stand in an opening while the deck is out of line. */
function creepFinding(yard: Yard, breaches: readonly Breach[]): Finding {
  const [first] = breaches as readonly [Breach, ...Breach[]];
  const names = roads(yard).filter((name) => breaches.some(({ road }) => road === name));
  const titles = names.map((road) => roadTitle(yard, road));
  return {
    grade: 'think',
    what: `With the pin out, ${listed(titles)} can be live just out of line with an opening.`,
    where: names,
    amount: `the deck less than ${yard.openingMm / 2} mm from a stop, and more than ${yard.toleranceMm} mm`,
    why: 'A loco driven out through the opening falls beside the rails.',
    cure: 'Do not drive while the pin is out; or let a contact of the pin cut the feed of the whole deck.',
    source: 'the engine',
    board: { yard, scene: breachScene(yard, first) }
  };
}

function provedFinding(yard: Yard, proof: GapProof, states: States): Finding {
  const moves = travel(yard).least < 0 && holes(yard).length > 0;
  return {
    grade: 'fine',
    what: moves
      ? 'Proved: with the pin home, no loco can be driven into the gap.'
      : 'Proved: no loco can be driven into the gap, for every end is closed.',
    where: [],
    amount: moves
      ? `${countText(proof.unsafeHome)} unsafe states with the pin home; ${unsafeText(proof, states)} in all`
      : unsafeText(proof, states),
    why: `Every state was covered: ${statesWords(states)}.`,
    cure: `It holds as long as this does. ${(moves ? assumptions : assumptions.slice(-1)).join(' ')}`,
    source: 'the engine',
    board: { yard, scene: provedScene(yard) }
  };
}

/** Whether a loco can ever be driven into the gap: proved, or the scene in which it can. */
export const gapProof: Check = {
  id: 'gap-proof',
  title: 'Can a loco be driven into the gap?',
  run(yard) {
    const ground = groundOf(yard);
    const states = statesOf(ground);
    const proof = proveGap(ground);
    // A ring takes no path away, so it cures nothing here.
    const worth = designChanges(yard).filter((cure) => cure.yard.return === yard.return);
    const tried = worth.map((cure) => ({
      ...cure,
      proof: proveGap(groundOf(cure.yard))
    }));
    const creeping = proof.breaches.filter((breach) => creeps(yard, breach));
    const standing = proof.breaches.filter((breach) => !creeps(yard, breach));
    return [
      ...standing.map((breach) =>
        breachFinding(yard, {
          breach,
          cure: cureOf(breach, tried),
          count: unsafeText(proof, states)
        })
      ),
      ...(standing.length === 0 ? [provedFinding(yard, proof, states)] : []),
      ...(creeping.length > 0 ? [creepFinding(yard, creeping)] : [])
    ];
  }
};
