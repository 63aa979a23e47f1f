import { locoIn, stockNamed, type Loco, type Yard } from '../yard';

/** A loco's outline in side view: front to the east, standing on y = 0, px. */
export interface Outline {
  readonly width: number;
  readonly body: string;
  readonly windows: string;
  /** Wheels: middle and radius. */
  readonly wheels: readonly (readonly [number, number])[];
}

/** Our own flat outlines, one for each shape. */
const outlines: Readonly<Record<Loco['shape'] | 'coach' | 'wagon', Outline>> = {
  tank: {
    width: 60,
    body: 'M-30-8V-34H-31V-37H-9V-34H-10V-27H15V-36H14V-38H22V-36H21V-27H27V-8Z',
    windows: 'M-25-31h10v8h-10z',
    wheels: [
      [-14, 8],
      [12, 8]
    ]
  },
  tender: {
    width: 106,
    body: 'M-10-8V-35H-11V-38H10V-35H9V-28H40V-36H39V-38H47V-36H46V-28H52V-8ZM-53-8V-28H-15V-8Z',
    windows: 'M-6-32h9v8h-9z',
    wheels: [
      [-44, 6],
      [-25, 6],
      [0, 8],
      [19, 8],
      [38, 8]
    ]
  },
  railcar: {
    width: 104,
    body: 'M-52-8V-30Q-52-36-46-36H46Q52-36 52-30V-8Z',
    windows: 'M-46-30h8v8h-8zM-32-30h14v8h-14zM-12-30h14v8h-14zM8-30h14v8h-14zM37-30h9v8h-9z',
    wheels: [
      [-38, 6],
      [-24, 6],
      [24, 6],
      [38, 6]
    ]
  },
  shunter: {
    width: 54,
    body: 'M-27-8V-24H-4V-36H-6V-39H20V-36H18V-24H27V-8Z',
    windows: 'M1-32h12v8h-12z',
    wheels: [
      [-14, 7],
      [14, 7]
    ]
  },
  diesel: {
    width: 104,
    body: 'M-52-8V-24L-45-36H45L52-24V-8Z',
    windows: 'M-44-31h7v8h-10zM37-31h7l3 8h-10z',
    wheels: [
      [-39, 6],
      [-25, 6],
      [25, 6],
      [39, 6]
    ]
  },
  coach: {
    width: 104,
    body: 'M-52-8V-31Q-48-37-40-37H40Q48-37 52-31V-8Z',
    windows:
      'M-44-30h12v9h-12zM-28-30h12v9h-12zM-12-30h12v9h-12zM4-30h12v9h-12zM20-30h12v9h-12zM36-30h8v9h-8z',
    wheels: [
      [-42, 6],
      [-28, 6],
      [28, 6],
      [42, 6]
    ]
  },
  wagon: {
    width: 44,
    body: 'M-22-10V-26H22V-10Z',
    windows: '',
    wheels: [
      [-12, 6],
      [12, 6]
    ]
  }
};

/** The outline of one of a yard's locos, or of other stock. */
export const outlineOf = (yard: Yard, name: string): Outline =>
  outlines[stockNamed(name) ? (name.split(' ')[0] as 'coach' | 'wagon') : locoIn(yard, name).shape];
