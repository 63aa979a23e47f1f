import {
  apply,
  locoIn,
  locoOf,
  read,
  startingVolts,
  trainWith,
  vehicles,
  vehicleWords,
  type Scene,
  type Yard
} from '../yard';

/**
 * What let a vehicle fall into the gap, in at most 20 words, worked out from the scene in which it
 * lies there; empty while none does.
 */
export function gapWords(yard: Yard, scene: Scene): string {
  const all = vehicles(scene);
  const fallen = Object.keys(all).find((name) => all[name]?.fallen);
  if (fallen === undefined) return '';
  const loco = locoOf(trainWith(scene, fallen)) ?? fallen;
  const road = all[loco]?.road ?? '';
  const live = isLive(yard, scene, { loco, road });
  if (loco !== fallen) {
    const why = live ? `whose road ${road} was live` : 'which was coasting';
    return `${vehicleWords(fallen)} fell into the gap: it was pushed by ${loco}, ${why}.`;
  }
  const fell = `${fallen} fell into the gap`;
  if (!live) return `${fell}: it was coasting, and nothing faced road ${road}.`;
  return `${fell}: road ${road} was live and nothing faced it; ${pinWords(yard, scene, road)}.`;
}

interface Driven {
  readonly loco: string;
  readonly road: string;
}

/** Whether the rails under a loco hold the volts that start it, as the knob stands. */
function isLive(yard: Yard, scene: Scene, { loco, road }: Driven): boolean {
  const volts = read(yard, scene).between(`feed rail ${road}`, `return rail ${road}`) ?? 0;
  return Math.abs(volts) >= startingVolts(locoIn(yard, loco));
}

function pinWords(yard: Yard, scene: Scene, road: string): string {
  const feed = apply(yard, scene).find(({ id }) => id === `feed ${road}`);
  const contact = feed?.parts.find(({ kind }) => kind === 'pin contact');
  if (!contact) return 'its feed has no pin contact';
  return contact.closed ? 'its pin contact was made' : 'its feed went round the pin contact';
}
