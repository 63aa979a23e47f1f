import { works, workingsOf, type Working } from '../motion';
import { joinWords, lampRoads, roadTitle, switchedRoads, type Yard } from '../yard';
import type { Sheet, Table } from './sheet';

/** What hands do to the switches for a movement, in words. */
function switchWords({ switching }: Yard, on: readonly string[]): string {
  if (on.length === 0) return 'nothing to switch';
  if (switching === 'rotary') return `selector at ${on[0]}`;
  const names = joinWords(on, 'and');
  return switching === 'pushes' ? `hold ${names}` : `${names} on, all others off`;
}

/** What is done at the end of a movement. */
const endWords = ({ switching }: Yard, on: readonly string[]): string => {
  if (on.length === 0) return 'Knob to centre';
  return `Knob to centre, then ${switching === 'pushes' ? 'let go' : 'all off'}`;
};

const row = (yard: Yard, working: Working): Table['rows'][number] => {
  const { from, to, hole, on, way } = working;
  const move = `${roadTitle(yard, from)} to ${roadTitle(yard, to)}`;
  const set = `Deck at ${hole}, pin home; ${switchWords(yard, on)}`;
  return works(yard, working)
    ? [move, set, `${way}, until the train is wholly on ${to}`, endWords(yard, on)]
    : [move, set, 'It does not get there: one of the two roads is dead', ''];
};

/** The moves over the deck's edge, each played by the engine with a loco. */
const moves = (yard: Yard): readonly Table[] => {
  const rows = workingsOf(yard).map((working) => row(yard, working));
  return rows.length === 0
    ? []
    : [
        {
          title: 'Moves',
          columns: ['Move', 'Set', 'Knob', 'Then'],
          rows,
          note: 'One of each kind, played with a loco by the engine: it gets there, and nothing else moves. Other roads are worked alike at their own holes.'
        }
      ];
};

/** What a panel lamp says, and what it does not. */
const lamps: Readonly<Record<'own' | 'track', Table['rows']>> = {
  own: [
    ['Lit', 'Its switch is on', 'That the road is live: it knows nothing of plug, pin or rails'],
    [
      'Dark',
      'Its switch is off, or the lamp has failed',
      'That the road is dead: try with a test lamp'
    ]
  ],
  track: [
    ['Lit', 'Volts stand behind its switch, the knob is east', 'That they reach the rails'],
    ['Dim', 'The knob is low', 'That anything is wrong'],
    ['Dark', 'No volts, or the knob is west', 'That the road is dead: try with a test lamp']
  ]
};

const lampTable = (yard: Yard): readonly Table[] =>
  yard.lamps === 'none' || lampRoads(yard).length === 0
    ? []
    : [
        {
          title: 'Lamps',
          columns: ['A lamp is', 'It says', 'It does not say'],
          rows: lamps[yard.lamps]
        }
      ];

/** Roads in one column of the card, so that it stays on one page. */
const IN_A_COLUMN = 20;

/** The switches in the order of the panel, a place beside each for the stock that is kept there. */
function switches(yard: Yard): Table {
  const title = 'Switches, in the order of the panel';
  const all = switchedRoads(yard);
  const named = all.map((road) => roadTitle(yard, road));
  if (all.length <= IN_A_COLUMN) {
    const rows = named.map((road) => [road, '', '']);
    return { title, columns: ['Road', 'Stock kept there', 'Remarks'], rows };
  }
  const count = Math.ceil(all.length / Math.ceil(all.length / IN_A_COLUMN));
  const starts = all.map((_, index) => index).filter((index) => index % count === 0);
  return {
    title,
    columns: starts.flatMap((start) => {
      const names = `${all[start]} to ${all[Math.min(start + count, all.length) - 1]}`;
      return [names, `Stock on ${names}`];
    }),
    rows: named
      .slice(0, count)
      .map((_, index) => starts.flatMap((start) => [named[start + index] ?? '', '']))
  };
}

/** How the yard is worked, on one page. Its moves are played: a page that must not stand still asks in a worker. */
export const operator: Sheet = {
  id: 'operator',
  title: 'Operator card',
  make: (yard) => ({
    says: [
      'One road on at a time, and two for a move from one to the other. Knob to centre before any switch, the deck or the pin is moved.',
      ...(workingsOf(yard).length > 0
        ? [
            'Never slide the deck with stock across its edge. Pin home before a loco moves onto or off the deck.'
          ]
        : []),
      ...(yard.runningRoad === 'direct'
        ? ['The running road stays live wherever the deck stands: keep locos back from its end.']
        : [])
    ],
    tables: [...moves(yard), ...lampTable(yard), switches(yard)]
  })
};
