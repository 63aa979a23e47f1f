import type { Draft } from './draft';

/** One way in which a yard could be built instead. */
export interface Variant {
  readonly name: string;
  readonly change: Draft;
  /** Whether the yard is like that already. */
  readonly is: (yard: { readonly [key: string]: unknown }) => boolean;
}

const variant = (name: string, key: string, value: string | boolean): Variant => ({
  name,
  change: { [key]: value },
  is: (yard) => yard[key] === value
});

/** What can be compared with the yard on the bench. */
export const variants: readonly Variant[] = [
  variant('a toggle for each road', 'switching', 'toggles'),
  variant('one rotary selector', 'switching', 'rotary'),
  variant('return as a chain', 'return', 'chain'),
  variant('return as a ring', 'return', 'ring'),
  variant('return as a star', 'return', 'star'),
  variant('running road straight from the controller', 'runningRoad', 'direct'),
  variant('running road by toggle and pin contact', 'runningRoad', 'interlocked'),
  variant('stabling roads with pin contacts', 'interlocked', true),
  variant('stabling roads without pin contacts', 'interlocked', false)
];
