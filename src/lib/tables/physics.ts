/**
 * Thermal voltage k·T/q at 300 K (26.85 °C), V.
 *
 * Source: k and q of the SI (exact since 2019): 1.380649e-23 × 300 / 1.602176634e-19 = 0.0258520.
 */
export const thermalVoltage = 0.025852;

/** Length of an inch, m. Source: international yard and pound agreement, 1959 (exact). */
export const inch = 0.0254;

/** Length of a foot, m. Source: as the inch (exact). */
export const foot = 0.3048;

/** Area of a disc of one mil (1/1000 in) in diameter, m². Source: by definition. */
export const circularMil = (Math.PI / 4) * (inch / 1000) ** 2;
