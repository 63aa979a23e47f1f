import { classLetters, type DesignationClass } from '../tables';
import { plugContacts, type Part, type Run, type Yard } from '../yard';
import { plugSizes } from './contactRows';

/** A part's name in the rows, and its reference designation in the circuit diagram: "toggle A", "−S1". */
export interface Designation {
  readonly place: string;
  readonly text: string;
}

/** Classes of the parts which are drawn as a symbol of their own; wires and loose metal have none. */
const classes: Partial<Readonly<Record<Part['kind'], DesignationClass>>> = {
  toggle: 'manual switch',
  push: 'manual switch',
  'pin contact': 'position switch',
  resistor: 'resistor',
  'lamp guard': 'resistor',
  lamp: 'indicator',
  meter: 'indicator',
  voltmeter: 'indicator',
  ohmmeter: 'indicator',
  'test lamp': 'indicator'
};

/**
 * The reference designations of a yard's wiring, as it stands in `runs`: a letter for the class, a
 * number in the order of the runs, and a contact of the plug by its number on the plug. Source: IEC 81346-1 (minus sign for what a
 * thing is), IEC 81346-2 (letters).
 */
export function designations(
  yard: Yard,
  runs: readonly Run[],
  locos: readonly string[]
): readonly Designation[] {
  const parts = runs.flatMap((run) => run.parts);
  const from = (node: string) => runs.some((run) => run.from === node);
  const supplies = [
    'controller',
    ...(from('feed 2') ? ['controller 2'] : []),
    ...(from('lamp +') ? ['lamp supply'] : [])
  ];
  const numbered = (kind: DesignationClass, places: readonly string[]): readonly Designation[] =>
    places.map((place, index) => ({ place, text: `−${classLetters[kind]}${index + 1}` }));
  const ofClass = (kind: DesignationClass) =>
    parts.filter((part) => classes[part.kind] === kind).map(({ id }) => id);
  const largest = plugSizes.at(-1) as number;
  const { 'manual switch': switched, plug } = classLetters;
  /** Contacts of the one rotary: position 1 is off. */
  const positions = parts.filter(({ kind }) => kind === 'selector');
  return [
    ...numbered('supply', supplies),
    ...numbered('manual switch', ofClass('manual switch')),
    ...positions.map(({ id }, index) => ({ place: id, text: `−${switched}1:${index + 2}` })),
    ...numbered('position switch', ofClass('position switch')),
    ...plugContacts(yard).map((place, index) => ({
      place,
      text: `−${plug}${Math.floor(index / largest) + 1}:${(index % largest) + 1}`
    })),
    ...numbered('motor', locos),
    ...numbered('resistor', ofClass('resistor')),
    ...numbered('indicator', ofClass('indicator'))
  ];
}
