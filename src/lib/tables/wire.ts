import { metals } from './metal';
import { inch } from './physics';

/** A way to name a conductor's size: `24/0.2` (strands/mm), `AWG 22` or `0.5 mm²`. */
export type WireSize = string;

/** Equipment wires of 0.2 mm strands that are sold everywhere. Source: common practice. */
export const strandedSizes = ['7/0.2', '16/0.2', '24/0.2', '32/0.2'] as const;

const stranded = /^(\d+)\/(\d+(?:\.\d+)?)$/;
const gauge = /^AWG (\d{1,2}|0{1,4})$/;
/** Strands of the size that all others are told in. */
const usualStrands = /^\d+\/0\.2$/;
const square = /^(\d+(?:\.\d+)?) mm²$/;

/**
 * Diameter of a solid round wire of American gauge n, m: 0.005 in × 92^((36 − n)/39).
 *
 * n from −3 (0000) to 40; a `RangeError` outside.
 *
 * Source: ASTM B258, the law from memory.
 *
 * @example
 * gaugeDiameter(36) // 0.000127
 */
export function gaugeDiameter(n: number): number {
  if (!(n >= -3 && n <= 40)) {
    throw new RangeError(`Gauge: AWG ${String(n)}. It must be from −3 (0000) to 40.`);
  }
  return 0.005 * inch * 92 ** ((36 - n) / 39);
}

/**
 * Area of copper in a wire, mm².
 *
 * A `RangeError` for a size that cannot be read.
 *
 * @example
 * wireAreaMm2('24/0.2') // 0.7540
 */
export function wireAreaMm2(size: WireSize): number {
  const area = strandedArea(size) ?? gaugeArea(size) ?? squareArea(size);
  if (area === undefined || !(area > 0)) {
    const allowed = "It must be like '24/0.2' (strands/mm), 'AWG 22' or '0.5 mm²'.";
    throw new RangeError(`Wire size: '${size}'. ${allowed}`);
  }
  return area;
}

/**
 * Resistance of a copper wire a metre long, Ω/m: R = ρ/A, no allowance for lay.
 *
 * `resistivity` in Ω·m, annealed copper at 20 °C unless given.
 *
 * @example
 * wireOhmsPerMetre('24/0.2') // 0.02287
 */
export function wireOhmsPerMetre(
  size: WireSize,
  resistivity: number = metals['annealed copper'].resistivity
): number {
  return resistivity / (wireAreaMm2(size) * 1e-6);
}

function strandedArea(size: WireSize): number | undefined {
  const [, strands, diameter] = stranded.exec(size) ?? [];
  return strands === undefined ? undefined : Number(strands) * discArea(Number(diameter));
}

function gaugeArea(size: WireSize): number | undefined {
  const [, name] = gauge.exec(size) ?? [];
  if (name === undefined) return undefined;
  const n = /^0+$/.test(name) ? 1 - name.length : Number(name);
  return discArea(gaugeDiameter(n) * 1000);
}

function squareArea(size: WireSize): number | undefined {
  const [, area] = square.exec(size) ?? [];
  return area === undefined ? undefined : Number(area);
}

const discArea = (diameter: number): number => (Math.PI / 4) * diameter ** 2;

const round = (value: number, digits: number): string => String(Number(value.toPrecision(digits)));

/**
 * A wire's size in the notations it is not written in: area, strands of 0.2 mm, nearest gauge.
 *
 * @example
 * sizeWords('16/0.2') // '0.5 mm², about AWG 20'
 */
export function sizeWords(size: WireSize): string {
  const area = wireAreaMm2(size);
  const strands = Math.max(1, Math.round(area / (Math.PI * 0.01)));
  const gauges = Array.from({ length: 31 }, (_, index) => index + 6);
  const nearest = gauges.reduce((best, gauge) =>
    Math.abs(Math.log(wireAreaMm2(`AWG ${gauge}`) / area)) <
    Math.abs(Math.log(wireAreaMm2(`AWG ${best}`) / area))
      ? gauge
      : best
  );
  const others = [
    ...(square.test(size) ? [] : [`${round(area, 2)} mm²`]),
    ...(usualStrands.test(size) ? [] : [`about ${strands}/0.2`]),
    ...(gauge.test(size) ? [] : [`about AWG ${nearest}`])
  ];
  return others.join(', ');
}
