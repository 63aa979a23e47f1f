import { metals } from './metal';

/** Class of conductor: 1 solid, 2 stranded, 5 flexible. */
export type ConductorClass = 1 | 2 | 5;

/** Greatest resistance of a conductor a kilometre long at 20 °C, Ω/km. */
export interface ConductorLimit {
  readonly mm2: number;
  readonly plain: number;
  readonly coated?: number;
}

const solid: readonly ConductorLimit[] = [
  { mm2: 0.5, plain: 36, coated: 36.7 },
  { mm2: 0.75, plain: 24.5, coated: 24.8 },
  { mm2: 1, plain: 18.1, coated: 18.2 },
  { mm2: 1.5, plain: 12.1, coated: 12.2 },
  { mm2: 2.5, plain: 7.41, coated: 7.56 },
  { mm2: 4, plain: 4.61, coated: 4.7 }
];

/**
 * Limits of resistance by class, Ω/km at 20 °C, for plain and metal-coated copper.
 *
 * Source: IEC 60228:2004, tables 1 to 3; the rows of 0.75 and 2.5 mm² class 1, and of the coated
 * 0.75 to 1.5 and 4 mm² class 1 and 0.75, 1 and 2.5 mm² class 5, from memory.
 */
export const conductorLimits: Readonly<Record<ConductorClass, readonly ConductorLimit[]>> = {
  1: solid,
  2: solid,
  5: [
    { mm2: 0.5, plain: 39, coated: 40.1 },
    { mm2: 0.75, plain: 26, coated: 26.7 },
    { mm2: 1, plain: 19.5, coated: 20 },
    { mm2: 1.5, plain: 13.3, coated: 13.7 },
    { mm2: 2.5, plain: 7.98, coated: 8.21 },
    { mm2: 4, plain: 4.95, coated: 5.09 }
  ]
};

/**
 * Limits of fine flexible wires below the range of the standard, Ω/km at 20 °C.
 *
 * Source: a single list attributed to DIN VDE 0295, ±3 %; the row of 0.22 mm² is doubtful.
 */
export const fineWireLimits: readonly ConductorLimit[] = [
  { mm2: 0.14, plain: 134, coated: 138 },
  { mm2: 0.22, plain: 96, coated: 99 },
  { mm2: 0.34, plain: 53, coated: 56 }
];

/**
 * Factor that brings a resistance measured at a temperature back to 20 °C.
 *
 * kt = 250 / (230 + T), T in °C: α of 0.004 at 20 °C, which is what the printed table follows.
 *
 * Source: IEC 60228, table of temperature factors.
 *
 * @example
 * backTo20(50) // 0.893
 */
export const backTo20 = (celsius: number): number => 250 / (230 + celsius);

/** Share of a source's voltage that feed and return may drop together. Source: NEM 604:2013 cl. 2.2. */
export const dropShare = 0.1;

/** Volts that each of feed and return may drop in practice. Source: NEM 604:2013 cl. 2.2. */
export const dropEachWay = 0.5;

/**
 * Length of one wire that drops a given voltage, m: l = ΔU·A / (ρ·I).
 *
 * `mm2` area of copper; `amps` current; `drop` V in that wire, 0.5 V unless given; copper as the
 * norm has it, 1.78e-8 Ω·m.
 *
 * Source: NEM 604:2013 cl. 2.4.
 *
 * @example
 * permissibleLength(1.5, 1) // 42.1
 */
export function permissibleLength(mm2: number, amps: number, drop: number = dropEachWay): number {
  return (drop * mm2 * 1e-6) / (metals['norm copper'].resistivity * amps);
}
