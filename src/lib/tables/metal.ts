/** Metals that wires and rails are made of. */
export type Metal =
  | 'annealed copper'
  | 'physics-text copper'
  | 'element copper'
  | 'norm copper'
  | 'aluminium'
  | 'nickel silver'
  | 'German silver'
  | 'copper-nickel'
  | 'brass'
  | 'steel'
  | 'physics-text steel'
  | 'iron';

/** Resistivity of a metal at 20 °C and what it rests on. */
export interface MetalEntry {
  /** Resistivity at 20 °C, Ω·m. */
  readonly resistivity: number;
  /** Temperature coefficient at 20 °C, 1/K, where one is known. */
  readonly alpha?: number;
  readonly source: string;
}

/**
 * Resistivity of metals at 20 °C, Ω·m, and temperature coefficient, 1/K.
 *
 * Wire tables use annealed copper; physics texts a purer one, 2.6 % lower.
 */
export const metals: Readonly<Record<Metal, MetalEntry>> = {
  'annealed copper': {
    resistivity: 1.7241e-8,
    alpha: 0.00393,
    source: 'IEC 60028 (International Annealed Copper Standard), from memory'
  },
  'physics-text copper': {
    resistivity: 1.68e-8,
    source: 'OpenStax University Physics vol. 2, sec. 9.3, m58731'
  },
  'element copper': {
    resistivity: 1.678e-8,
    alpha: 0.004041,
    source: 'Lessons in Electric Circuits I, Physics of Conductors'
  },
  'norm copper': {
    resistivity: 1.78e-8,
    source: 'NEM 604:2013, from its table of permissible lengths'
  },
  aluminium: {
    resistivity: 2.65e-8,
    source: 'Lessons in Electric Circuits I, Physics of Conductors'
  },
  'nickel silver': {
    resistivity: 2.9e-7,
    alpha: 0.0004,
    source: 'C75200 at 6 % IACS, from memory; compositions run from 1.6e-7 to 4.0e-7 (Kaye & Laby)'
  },
  'German silver': {
    resistivity: 3.3e-7,
    alpha: 0.0004,
    source: 'Smithsonian Physical Tables, 18 % nickel, from memory'
  },
  'copper-nickel': { resistivity: 3.75e-7, source: 'C71500 data sheet, 4.6 % IACS' },
  brass: { resistivity: 6.2e-8, source: 'C26000 at 28 % IACS, from memory' },
  steel: { resistivity: 1.66e-7, source: 'plain carbon steel, from memory' },
  'physics-text steel': {
    resistivity: 2.0e-7,
    source: 'OpenStax University Physics vol. 2, sec. 9.3, m58731'
  },
  iron: { resistivity: 9.71e-8, source: 'OpenStax University Physics vol. 2, sec. 9.3, m58731' }
};

/**
 * Resistance at a temperature from its value at 20 °C: R = R20·(1 + α·(T − 20)).
 *
 * `alpha` in 1/K at 20 °C, `celsius` in °C.
 *
 * Source: Lessons in Electric Circuits I, Temperature Coefficient of Resistance.
 *
 * @example
 * atTemperature(15, 0.004041, 35) // 15.909…
 */
export function atTemperature(ohmsAt20: number, alpha: number, celsius: number): number {
  return ohmsAt20 * (1 + alpha * (celsius - 20));
}
