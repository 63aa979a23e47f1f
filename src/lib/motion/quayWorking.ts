import type { YardInput } from '../yard';
import type { SequenceInput } from './sequence';

/** The toggles that the working throws, all others off. */
const only = (...on: readonly string[]) =>
  Object.fromEntries(['Q1', 'Q2', 'C', 'R', '2'].map((road) => [road, on.includes(road)]));

/** A train comes in on C and goes out behind another loco; the first one goes to stabling road 2. Source: our own demo scenario. */
export const quayWorking: {
  readonly yard: YardInput;
  readonly sequence: SequenceInput;
} = {
  yard: {
    name: 'Quillby Quay, improved',
    deckRoads: 5,
    stablingRoads: 4,
    runningRoad: 'interlocked',
    cuts: [{ road: 'Q', atMm: 1400 }]
  },
  sequence: {
    name: 'A working, start to end',
    scene: {
      deck: 'C',
      locos: { Heron: { road: 'Q2', atMm: 400 }, Plover: { road: '2', faces: 'west' } },
      stock: { coach: { behind: 'Heron' } }
    },
    steps: [
      {
        words: 'Heron brings a coach in on C.',
        do: { switch: only('Q2', 'C') },
        drive: 'east',
        until: { loco: 'Heron', at: 'end' }
      },
      {
        words: 'The coach is uncoupled.',
        do: { couple: { coach: 'none' }, switch: only() }
      },
      {
        words: 'Deck pinned at 2. Plover comes out onto R.',
        do: { deck: '2', pin: 'home', switch: only('R', '2') },
        drive: 'west',
        until: { loco: 'Plover', on: 'R' }
      },
      {
        words: 'Deck to R. Plover runs out on the Quay line.',
        do: { deck: 'R', pin: 'home', switch: only('Q2', 'R') },
        drive: 'west',
        until: { loco: 'Plover', on: 'Q' }
      },
      {
        words: 'Deck to C. Plover backs on to the coach.',
        do: { deck: 'C', pin: 'home', switch: only('Q2', 'C') },
        drive: 'east',
        until: { loco: 'Plover', meets: 'coach' }
      },
      {
        words: 'The coach is coupled to Plover.',
        do: { couple: { coach: 'Plover' }, switch: only() }
      },
      {
        words: 'Plover takes the coach away west. Heron follows as far as Q2.',
        do: { switch: only('C', 'Q1', 'Q2') },
        drive: -0.55,
        until: { loco: 'Plover', on: 'Q1' },
        moves: ['Heron']
      },
      {
        words: 'Section Q1 off. Deck to R, and Heron goes onto it.',
        do: { deck: 'R', pin: 'home', switch: only('Q2', 'R') },
        drive: 'east',
        until: { loco: 'Heron', on: 'R' }
      },
      {
        words: 'Deck pinned at 2. Heron goes into stabling road 2.',
        do: { deck: '2', pin: 'home', switch: only('R', '2') },
        drive: 'east',
        until: { loco: 'Heron', on: '2' }
      }
    ]
  }
};
