import type { Part, Yard } from '../yard';

/** The kinds of wire that a yard is made of, as people name them. */
export const wireWords = {
  main: 'wires to and from the controller',
  link: 'links of feed and return',
  dropper: 'droppers',
  lamp: 'lamp wires'
} as const;
export type WireKind = keyof typeof wireWords;

/** Which of a yard's wires a part is cut from; undefined for what is no wire. */
export const wireKind = ({ wires }: Yard, { wire }: Part): WireKind | undefined =>
  (Object.keys(wireWords) as WireKind[]).find((kind) => wires[kind] === wire);
