import { equipmentWireAmps } from './ampacity';
import { wireAreaMm2, type WireSize } from './wire';

/** Most a contact should carry, and what that rests on. */
export interface ContactRating {
  readonly amps: number;
  readonly source: string;
}

/** Direct current that a contact may carry, A. */
export const contactAmps: Readonly<
  Record<'toggle' | 'rotary selector' | 'push' | 'micro-switch' | 'plug contact', ContactRating>
> = {
  toggle: { amps: 3, source: 'common catalogues, 3 to 6 A at 28 V DC, the least; from memory' },
  'rotary selector': {
    amps: 2,
    source: 'common catalogues, 2 to 5 A carried once made, the least; from memory'
  },
  push: { amps: 1, source: 'common catalogues, 1 to 3 A, the least; from memory' },
  'micro-switch': { amps: 3, source: 'common catalogues, 3 to 5 A, the least; from memory' },
  'plug contact': { amps: 3, source: 'common practice: several contacts loaded together' }
};

/** Current below which an ordinary silver contact may not break its film, A. Source: common catalogues, from memory. */
export const silverLeastAmps = 0.16;

/** Amps for each mm² of copper where no table has the size. Source: the equipment wires' own ratio, from memory. */
const AMPS_PER_MM2 = 5.9;

/**
 * Current that a wire may carry for good, A: the equipment wire's rating, or 5.9 A for each mm².
 *
 * A `RangeError` for a size that cannot be read.
 *
 * @example
 * wireAmps('16/0.2') // 3
 */
export const wireAmps = (size: WireSize): number =>
  equipmentWireAmps[size]?.amps ?? AMPS_PER_MM2 * wireAreaMm2(size);

/** Rated currents of small fuses, A. Source: IEC 60127, R10 series; from memory. */
const fuses = [0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10];

/**
 * The fuse for a wire, A: the least that carries the load and not more than the wire may carry,
 * IB ≤ In ≤ Iz; undefined when there is none. Source: IEC 60364-4-43, inequality from memory.
 *
 * @example
 * fuseFor(0.9, 3) // 1
 */
export const fuseFor = (loadAmps: number, wireLimitAmps: number): number | undefined =>
  fuses.find((amps) => amps >= loadAmps && amps <= wireLimitAmps);

/** What copper in PVC can take, A·√s for each mm². Source: IEC 60364-4-43, k = 115; from memory. */
const K_PVC = 115;

/**
 * How long `areaMm2` of copper in PVC takes a short of `amps` before its insulation is spoilt, s: k²S²/I².
 * No heat is taken to leave the wire, so that it is rather longer. Source: IEC 60364-4-43, the adiabatic rule.
 *
 * @example
 * spoiltAfter(0.5, 10) // 33.06
 */
export const spoiltAfter = (areaMm2: number, amps: number): number =>
  (K_PVC * areaMm2) ** 2 / amps ** 2;
