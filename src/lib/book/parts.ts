import { group } from 'd3';
import { contactAmps, wireAmps } from '../tables';
import { wire, type Part, type Yard } from '../yard';
import { colourText } from './colours';
import { holeText } from './panel';
import { plugsOf } from './plug';
import type { Sheet, Table } from './sheet';
import { cutM, wiresOf } from './wires';

interface Kind {
  readonly kind: Part['kind'];
  readonly name: string;
  readonly rating: string;
  /** Hole in the panel. */
  readonly hole: string;
}

/** The lamps of their own supply have the second pole of each switch. */
const polesOf = ({ lamps }: Yard): string => (lamps === 'own' ? 'two poles' : 'one pole');

/** What is bought. Ratings and holes: common practice, makers' data win. */
function kinds(yard: Yard): readonly Kind[] {
  return [
    {
      kind: 'toggle',
      name: `Miniature toggle, ${polesOf(yard)}, on and off`,
      rating: `${contactAmps.toggle.amps} A`,
      hole: holeText('toggle')
    },
    {
      kind: 'push',
      name: 'Sprung push, makes when pressed',
      rating: '1 A',
      hole: holeText('push')
    },
    {
      kind: 'pin contact',
      name: 'Micro-switch, worked by the locating pin',
      rating: `${contactAmps['micro-switch'].amps} A`,
      hole: ''
    },
    { kind: 'lamp', name: 'LED, red, 3 mm, in a bezel', rating: '20 mA', hole: holeText('lamp') },
    { kind: 'lamp guard', name: 'Small signal diode', rating: '100 mA', hole: '' }
  ];
}

function bought(yard: Yard): Table {
  const parts = wire(yard).flatMap((run) => run.parts);
  const rows = kinds(yard).flatMap(({ kind, name, rating, hole }) => {
    const count = parts.filter((part) => part.kind === kind).length;
    return count === 0 ? [] : [[name, count, rating, hole]];
  });
  const positions = parts.filter(({ kind }) => kind === 'selector').length;
  const rotary =
    positions === 0
      ? []
      : [
          [
            `Rotary selector, ${polesOf(yard)}, ${positions + 1} positions, ${yard.rotary}`,
            1,
            '0.3 A',
            holeText('rotary')
          ]
        ];
  const tags = new Set(
    wiresOf(yard)
      .flatMap(({ from, to }) => [from, to])
      .filter((end) => /^(feed|return) tag | joint$/.test(end))
  );
  const plugs = [...group(plugsOf(yard), ({ size }) => size)].map(([size, all]) => [
    `Plug and socket, ${size} contacts`,
    all.length,
    `${contactAmps['plug contact'].amps} A a contact`,
    ''
  ]);
  const resistors = group(
    parts.filter(({ kind }) => kind === 'resistor'),
    ({ ohms }) => ohms
  );
  return {
    title: 'Parts',
    columns: ['Part', 'Number', 'Rating', 'Hole'],
    rows: [
      ...rows,
      ...rotary,
      ...[...resistors].map(([ohms, all]) => [
        `Resistor, ${ohms} Ω, 0.25 W`,
        all.length,
        '0.25 W',
        ''
      ]),
      ...plugs,
      ...(tags.size > 0 ? [['Solder tag, where wires meet', tags.size, '', '']] : [])
    ],
    note: 'Ratings and holes are common practice: the maker’s data win.'
  };
}

function wireTable(yard: Yard): Table {
  const groups = group(
    wiresOf(yard).map((wire) => ({ ...wire, colour: colourText(yard, wire) })),
    ({ size, job, colour }) => `${size} for ${job} ${colour}`
  );
  return {
    title: 'Wire',
    columns: ['Wire', 'Colour', 'Pieces', 'Metres, cut', 'May carry'],
    rows: [...groups.values()].map((all) => [
      `${all[0]?.size} for ${all[0]?.job}`,
      all[0]?.colour ?? '',
      all.length,
      Number(all.reduce((sum, each) => sum + cutM(each), 0).toFixed(1)),
      `${wireAmps(all[0]?.size ?? '').toFixed(1)} A`
    ])
  };
}

/** What to buy. */
export const parts: Sheet = {
  id: 'parts',
  title: 'Parts',
  make: (yard) => ({
    says: [
      'A ready-made, isolated supply or controller, in its own sound enclosure, is bought as it is.',
      ...(yard.lamps === 'own'
        ? [
            `The lamps need another one, of ${yard.lampSupply.volts} V DC: isolated, and joined to nothing else.`
          ]
        : [])
    ],
    tables: [bought(yard), wireTable(yard)]
  })
};
