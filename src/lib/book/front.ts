import { deckRoom, feedOf, roadsOf, roadTitle, type Yard } from '../yard';
import type { Sheet } from './sheet';

const count = (number: number, one: string): string => `${number} ${one}${number === 1 ? '' : 's'}`;

/** How this yard works, in a paragraph made from it. */
function works(yard: Yard): string {
  const all = roadsOf(yard);
  const switched = {
    toggles: 'Each road has a toggle in its feed',
    rotary: 'One rotary selector feeds one road at a time',
    pushes: 'Each road has a sprung push in its feed',
    none: 'Every road is fed at once'
  }[yard.switching];
  const home = {
    chain: 'the return is looped from road to road',
    ring: 'the return is looped from road to road and closed to a ring',
    star: 'each road’s return goes home by itself'
  }[yard.return];
  const guarded = all.some(({ kind }) => kind === 'stabling') && yard.interlocked;
  const plugged = yard.plug ? ' The deck gets its feeds and its return through the plug.' : '';
  const pin = guarded
    ? ' A stabling road stays dead until the locating pin is home in its own hole: its contact comes ahead of the switch.'
    : '';
  return `${switched}, and ${home}.${plugged}${pin}`;
}

/** What the book is about, and how the yard works. The page puts the cautions under it. */
export const front: Sheet = {
  id: 'front',
  title: 'Front sheet',
  make(yard) {
    const room = deckRoom(yard);
    const fed = new Set(roadsOf(yard).map(({ name }) => feedOf(yard, name)));
    return {
      says: [works(yard)],
      tables: [
        {
          title: 'The yard',
          columns: ['What', 'How much'],
          rows: [
            ['Scale', yard.scale],
            ['On the deck', count(yard.deckRoads, 'storage road')],
            ['Beyond the deck', count(yard.stablingRoads, 'stabling road')],
            ['The deck slides', `${Math.round(room.travelMm)} mm`],
            ['Supply', `${yard.supply.volts} V DC, limit ${yard.supply.limitAmps} A`],
            ['Controllers', String(fed.size)],
            ...(yard.lamps === 'own'
              ? [['Lamp supply', `${yard.lampSupply.volts} V DC, isolated`]]
              : [])
          ]
        },
        {
          title: 'Roads',
          columns: ['Road', 'Name', 'Kind', 'Length, mm'],
          rows: roadsOf(yard).map(({ name, kind, lengthMm }) => [
            name,
            roadTitle(yard, name),
            kind,
            Math.round(lengthMm)
          ])
        }
      ]
    };
  }
};
