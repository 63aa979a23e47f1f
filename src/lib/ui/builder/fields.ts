import { colourCodes } from '../../tables';
import type { Yard, YardInput } from '../../yard';

/** One value of a yard that can be set in the builder. */
export interface Field {
  /** Keys from the outside in, such as ['supply', 'volts']. */
  readonly path: readonly string[];
  readonly name: string;
  /** What it does, in a short sentence. */
  readonly about: string;
  readonly unit?: string;
  /** A `list` is names of roads, with spaces or commas between. */
  readonly kind: 'number' | 'text' | 'list' | 'size' | 'choice' | 'check';
  /** Of a choice: what is written, and what is shown. */
  readonly options?: readonly (readonly [value: string, name: string])[];
  /** Whether the value that stands there unasked is common practice, not the owner's. */
  readonly usual?: boolean;
  /** Of text: what an empty field means. */
  readonly empty?: string;
  /** Whether it makes a difference to this yard; undefined: always. */
  readonly matters?: (yard: Yard) => boolean;
}

/** Fields that belong together. */
export interface FieldGroup {
  readonly name: string;
  readonly fields: readonly Field[];
}

const number = (key: keyof YardInput, name: string, about: string): Field => ({
  path: [key],
  name,
  about,
  kind: 'number'
});

const length = (key: keyof YardInput, name: string, about: string): Field => ({
  ...number(key, name, about),
  unit: 'mm',
  usual: true
});

const choice = (
  key: keyof YardInput,
  name: string,
  about: string,
  options: Field['options'] & object
): Field => ({ path: [key], name, about, kind: 'choice', options });

const check = (key: keyof YardInput, name: string, about: string): Field => ({
  path: [key],
  name,
  about,
  kind: 'check'
});

const within = (
  outer: 'supply' | 'lampSupply' | 'plug' | 'wires',
  path: readonly string[],
  rest: Omit<Field, 'path' | 'kind'> & { readonly kind?: Field['kind'] }
): Field => ({ kind: 'number', usual: true, ...rest, path: [outer, ...path] });

const wire = (run: string, name: string, about: string): readonly Field[] => [
  within('wires', [run, 'size'], { name: `${name}: size`, about, kind: 'size' }),
  within('wires', [run, 'lengthM'], { name: `${name}: length`, about: 'One way.', unit: 'm' })
];

const colour = (wire: string, name: string): Field => ({
  path: ['colours', wire],
  name: `${name}: colour`,
  about: 'Your own, or as the scheme has it.',
  kind: 'choice',
  options: [
    ['', 'as the scheme'],
    ...Object.entries(colourCodes).map(([code, word]) => [code, `${code} ${word}`] as const)
  ]
});

/** Fields that make a difference to some yards only. */
const where = (matters: Field['matters'] & object, ...fields: readonly Field[]): readonly Field[] =>
  fields.map((field) => ({ ...field, matters }));

const hasStabling = ({ stablingRoads }: Yard) => stablingRoads > 0;
const hasRunning = ({ runningRoad }: Yard) => runningRoad !== 'none';
const hasLamps = ({ lamps }: Yard) => lamps !== 'none';
/** Lamps have the second pole of a toggle, or the second wafer of a rotary. */
const takesLamps = ({ switching, lamps }: Yard) =>
  switching === 'toggles' || switching === 'rotary' || lamps !== 'none';

/** Figures of a loco of one's own; what is left out is as with the demo loco of its shape. */
export const locoFields = (loco: string): readonly Field[] => {
  const figure = (key: string, name: string, unit: string, about: string): Field => ({
    path: ['locos', loco, key],
    name,
    about,
    unit,
    kind: 'number',
    usual: true
  });
  return [
    {
      path: ['locos', loco, 'shape'],
      name: 'Shape',
      about: 'How it is drawn. Figures you leave out follow it.',
      kind: 'choice',
      options: [
        ['tank', 'tank loco'],
        ['tender', 'tender loco'],
        ['railcar', 'railcar'],
        ['shunter', 'small shunter'],
        ['diesel', 'bogie diesel']
      ]
    },
    figure('lengthMm', 'Length', 'mm', 'Over the buffers.'),
    figure(
      'pickupSpanMm',
      'Pick-ups reach',
      'mm',
      'From the first to the last wheel that picks up.'
    ),
    figure('lightAmps', 'Runs light at', 'A', 'An ammeter in one wire, on 12 V, no train.'),
    figure('ohms', 'Motor', 'Ω', 'Ohms from rail to rail, supply unplugged, the least you read.'),
    figure('lightSpeed', 'Runs light', 'm/s', 'Metres in a second, on 12 V, no train.'),
    figure('mass', 'Mass', 'kg', 'From the kitchen scales.')
  ];
};

/** The three numbers to begin with. */
export const firstFields: readonly Field[] = [
  number('deckRoads', 'Storage roads on the deck', 'Roads that hold trains.'),
  number('stablingRoads', 'Stabling roads', 'Roads for locos beyond the deck.'),
  choice('scale', 'Scale', 'Usual lengths follow it.', [
    ['N', 'N: 9 mm gauge'],
    ['OO/HO', 'OO/HO: 16.5 mm gauge'],
    ['O', 'O: 32 mm gauge']
  ])
];

/** Everything else that can be set, in the order in which one decides it. */
export const groups: readonly FieldGroup[] = [
  {
    name: 'Roads',
    fields: [
      choice('runningRoad', 'Running road', 'How the road from the layout gets its feed.', [
        ['none', 'there is none'],
        ['direct', 'straight from the controller'],
        ['interlocked', 'by toggle and pin contact']
      ]),
      ...where(
        hasRunning,
        choice('runningEnds', 'Running roads: where', 'Where the layout joins the deck.', [
          ['west', 'one, in the west'],
          ['east', 'one, in the east'],
          ['both', 'one at each end'],
          ['two west', 'two side by side in the west'],
          ['two east', 'two side by side in the east']
        ])
      ),
      check('releaseRoad', 'A release road', 'Kept empty, to let a loco out to stabling.'),
      ...where(
        hasStabling,
        {
          path: ['facesStabling'],
          name: 'Deck road that faces stabling',
          about: 'Its letter, such as R.',
          kind: 'text',
          usual: true
        },
        check(
          'interlocked',
          'Pin contact in each stabling feed',
          'Dead until a deck road faces it.'
        )
      ),
      length('roadLengthMm', 'Deck roads: length', 'The deck is as long.'),
      ...where(
        hasRunning,
        length('runningLengthMm', 'Running road: length', 'From the layout to the deck.')
      ),
      ...where(hasStabling, length('stablingLengthMm', 'Stabling roads: length', 'Length of each.'))
    ]
  },
  {
    name: 'Deck',
    fields: [
      length('centresMm', 'Centre to centre', 'Room for fingers between two trains.'),
      ...where(
        ({ releaseRoad }) => releaseRoad,
        length('releaseCentresMm', 'Last road to release road', 'Centre to centre.')
      ),
      ...where(
        hasStabling,
        length('stablingFromMm', 'Running line to stabling 1', 'How far south it lies.')
      ),
      length('toleranceMm', 'Still faces at', 'More than this out of line is a gap.'),
      length('openingMm', 'Opening in the barrier', 'At each fixed road.'),
      {
        path: ['endStops'],
        name: 'Stops at the deck end',
        about: 'Fixed roads with a stop, closed whenever nothing faces them, such as Q 1 2.',
        kind: 'list'
      }
    ]
  },
  {
    name: 'Wiring',
    fields: [
      choice('switching', 'Switching', 'What feeds one road and not another.', [
        ['toggles', 'a toggle for each road'],
        ['rotary', 'one rotary selector'],
        ['pushes', 'a sprung push for each road'],
        ['none', 'none: every road is fed']
      ]),
      ...where(
        ({ switching }) => switching === 'rotary',
        choice('rotary', 'Rotary selector', 'What it does from one position to the next.', [
          ['break before make', 'breaks before it makes'],
          ['make before break', 'makes before it breaks']
        ])
      ),
      ...where(
        takesLamps,
        choice('lamps', 'Panel lamps', 'They need toggles or a rotary.', [
          ['none', 'none'],
          ['own', 'on a supply of their own'],
          ['track', 'fed from the track']
        ])
      ),
      ...where(
        ({ lamps }) => lamps === 'own',
        within('lampSupply', ['volts'], {
          name: 'Supply of the lamps',
          about: 'Isolated, for lamps on a supply of their own.',
          unit: 'V'
        })
      ),
      choice('return', 'Return', 'How the way home goes from road to road.', [
        ['chain', 'chain'],
        ['ring', 'ring'],
        ['star', 'star']
      ]),
      check('plug', 'A plug in the lead', 'Without one the deck is wired for good.'),
      ...where(
        ({ plug }) => plug !== false,
        within('plug', ['returnContacts'], {
          name: 'Plug contacts for the return',
          about: 'Side by side: they share the amps.'
        })
      ),
      ...wire('main', 'Controller to panel', 'Such as 24/0.2, 0.75 mm² or AWG 18.'),
      ...wire('link', 'Road to road', 'Such as 24/0.2, 0.75 mm² or AWG 18.'),
      ...wire('dropper', 'Toggle to rail', 'Such as 16/0.2, 0.5 mm² or AWG 20.'),
      {
        path: ['colours', 'scheme'],
        name: 'Wire colours',
        about: 'Written on the circuit diagram as letters.',
        kind: 'choice',
        options: [
          ['none', 'not settled'],
          ['common practice', 'red and black, as usual'],
          ['NEM 605', 'as NEM 605 has them']
        ]
      },
      colour('feed', 'Feed'),
      colour('return', 'Return'),
      ...where(hasLamps, colour('lampFeed', 'Lamp feed'), colour('lampReturn', 'Lamp return'))
    ]
  },
  {
    name: 'Supply',
    fields: [
      within('supply', ['volts'], { name: 'Full knob', about: 'Bought, certified.', unit: 'V' }),
      within('supply', ['ohms'], { name: 'Inside resistance', about: 'Sags by it.', unit: 'Ω' }),
      within('supply', ['limitAmps'], {
        name: 'Limit',
        about: 'The controller gives no more.',
        unit: 'A'
      })
    ]
  }
];
