/** What every element has: a unique id and two nodes. */
export interface Common {
  readonly id: string;
  readonly a: string;
  readonly b: string;
}

/** What a field may hold. `positive` is above 0, `natural` 0 or more. */
export type Rule = 'positive' | 'natural' | 'finite' | 'boolean';

/** One field of an element kind, as it is checked and named in errors. */
export interface Field {
  readonly name: string;
  readonly rule: Rule;
  readonly unit: string;
  readonly optional?: true;
}

/**
 * What the engine knows of an element, whatever its kind.
 *
 * Current from a to b with v = V(a) − V(b) less the junction's drop, if it has one:
 * i = clamp((v − emf) / ohms, ±limit) + amps; ohms = Infinity is no connection.
 */
export interface Model {
  readonly ohms: number;
  readonly emf?: number;
  readonly limit?: number | undefined;
  readonly amps?: number;
  readonly junction?: {
    /** Saturation current, A. */
    readonly saturation: number;
    /** Ideality × thermal voltage, V. */
    readonly scale: number;
  };
}

/** One kind of element: its words, its fields and its behaviour, in one file. */
export interface Kind<E extends Common = Common> {
  readonly kind: string;
  /** How errors name it: `Resistor R3`. */
  readonly noun: string;
  readonly fields: readonly Field[];
  /** Does it use what the circuit carries (a motor, a lamp) rather than lead it on? */
  readonly load: boolean;
  model(element: E): Model;
}
