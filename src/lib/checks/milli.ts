/** Milliamps or milliwatts to three figures: "10 mA", "821 mA", "4.56 mA". */
export const milliText = (value: number, unit: 'A' | 'W'): string =>
  `${Number((value * 1000).toPrecision(3))} m${unit}`;
