/** Amps or watts to three figures, small ones in thousandths: "10 mA", "821 mW", "2.51 A". */
export const milliText = (value: number, unit: 'A' | 'W'): string =>
  value < 1
    ? `${Number((value * 1000).toPrecision(3))} m${unit}`
    : `${Number(value.toPrecision(3))} ${unit}`;
