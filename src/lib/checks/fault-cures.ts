import { once, pinnedRoads, roadTitle, type Fault, type Yard } from '../yard';
import { designChanges } from './design-changes';
import { hurtYard } from './gap/hurt';
import { groundOf, type Breach, type GapProof, type Ground } from './gap/proof';
import { soundOf, type Sound } from './gap/sound';

/** A change of the design, and what the proof says of the yard with it and with some faults. */
interface Remedy {
  readonly words: string;
  readonly proof: (faults: readonly Fault[]) => GapProof;
}

/**
 * A second contact of the pin beside the first, next to the rails of the road. It is open whenever
 * nothing faces the road: the proof sees it as that road's dropper off, as well as the faults.
 */
const secondContact = (yard: Yard, own: () => Sound, road: string): Remedy => ({
  words: `Put a second contact of the pin, of another make, in series in the feed of ${roadTitle(yard, road)}, next to its rails.`,
  proof: (faults) => hurtYard(own(), [...faults, { wireOff: `feed dropper ${road}` }]).proof
});

/**
 * Tells the cheapest change of design by which faults no longer open an end: a ring instead of a
 * chain, a second contact of the pin, contacts of the pin where there are none; a stop where the proof
 * says that none of these helps.
 */
export function faultCures(ground: Ground): (faults: readonly Fault[], breach: Breach) => string {
  const { yard } = ground;
  const soundWith = once((changed: Yard) => soundOf(changed === yard ? ground : groundOf(changed)));
  const doubled = pinnedRoads(yard);
  const changes = designChanges(yard).map((change) => ({
    words: change.words,
    isRing: change.yard.return !== yard.return,
    proof: (faults: readonly Fault[]) => hurtYard(soundWith(change.yard), faults).proof
  }));
  return (faults, { road, end }) => {
    const tried: readonly Remedy[] = [
      ...changes.filter(({ isRing }) => isRing),
      ...(doubled.includes(road) ? [secondContact(yard, () => soundWith(yard), road)] : []),
      ...changes.filter(({ isRing }) => !isRing)
    ];
    const remedy = tried.find(
      ({ proof }) =>
        !proof(faults).breaches.some(
          (each) => each.pin === 'home' && each.road === road && each.end === end
        )
    );
    const stop = `Put a stop at the ${end} end of ${roadTitle(yard, road)}, closed whenever nothing faces it.`;
    return remedy?.words ?? stop;
  };
}
