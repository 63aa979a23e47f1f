import { admitWalk, WALK_FORMAT, type Walkthrough } from '../../src/lib/walk';

/** A walkthrough of the demo yard as plain data: one road, a call, another road, the deck. */
export const sampleFile = {
  format: WALK_FORMAT,
  version: 1,
  title: 'How Quillby Quay is wired',
  yard: {
    name: 'Quillby Quay',
    deckRoads: 5,
    stablingRoads: 4
  },
  steps: [
    {
      heading: 'One road is one loop',
      words: 'Current goes **out** by the feed, through Plover, and *home* by the return.',
      scene: { locos: { Plover: 'A', Heron: 'B' }, switches: { A: 'on' }, controller: '60% east' },
      lit: ['road A']
    },
    {
      heading: 'One toggle each',
      words: 'Toggle B is open, so Heron stands.\n\n- one road\n- one toggle',
      scene: { locos: { Plover: 'A', Heron: 'B' }, controller: '60% east' },
      lit: ['toggle B', 'Heron'],
      show: ['plan', 'rows', 'panel'],
      call: {
        ask: 'You switch road B on. What do Plover and Heron do?',
        do: { switch: { B: 'on' } },
        about: ['Plover', 'Heron']
      }
    },
    {
      heading: 'The deck slides to R',
      words: 'The pin comes out, the deck slides until R faces the Quay line, the pin goes home.',
      scene: {
        locos: { Plover: 'A', Heron: 'C' },
        switches: { B: 'on' },
        deck: 'R',
        plug: 'out',
        controller: '60% east'
      },
      lit: ['pin', 'deck', 'plug'],
      show: ['plan', 'rows']
    }
  ]
};

/** The same, let in. */
export const sampleWalk: Walkthrough = admitWalk(sampleFile);
