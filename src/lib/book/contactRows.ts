/** A contact's place in a plug, in steps from contact to contact, as seen on the plug's mating side. */
export interface ContactPlace {
  readonly number: number;
  readonly x: number;
  readonly row: number;
}

/**
 * Contacts in each row of plugs that are sold, the row of contact 1 first. 9 to 50: the standard
 * D-type arrangement (MIL-DTL-24308, as general texts print it); 5: a single row, common practice.
 */
const rows: Readonly<Record<number, readonly number[]>> = {
  5: [5],
  9: [5, 4],
  15: [8, 7],
  25: [13, 12],
  37: [19, 18],
  50: [17, 16, 17]
};

/** Sizes of plugs, contacts. */
export const plugSizes: readonly number[] = Object.keys(rows).map(Number);

/** Where each contact of a plug sits; middles of the rows lie above each other. */
export const contactPlaces = (size: number): readonly ContactPlace[] => {
  const all = rows[size] ?? [size];
  return all.flatMap((count, row) => {
    const before = all.slice(0, row).reduce((sum, each) => sum + each, 0);
    return Array.from({ length: count }, (_, index) => ({
      number: before + index + 1,
      x: index - (count - 1) / 2,
      row
    }));
  });
};
