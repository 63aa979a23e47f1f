import * as v from 'valibot';
import { ampsText, meterVoltsText, ohmsText } from '../../yard';
import { questionKind, type Played } from './kind';

const optionAllowed = "figures with their unit: '12 V', '0.25 A', '150 mA', '30 Ω', 'open'";
const form = /^(-?\d+(?:\.\d+)?) ?(V|mA|A|kΩ|Ω)$/;
const scale: Readonly<Record<string, number>> = { V: 1, A: 1, mA: 1e-3, Ω: 1, kΩ: 1e3 };

const optionSchema = v.pipe(
  v.string(optionAllowed),
  v.check((text) => text === 'open' || form.test(text), optionAllowed)
);

interface Figure {
  readonly value: number;
  readonly unit: string;
}

const figure = (option: string): Figure => {
  const [, value, unit] = form.exec(option) ?? [];
  return unit === undefined
    ? { value: Infinity, unit: 'Ω' }
    : { value: Number(value) * (scale[unit] as number), unit: unit.slice(-1) };
};

/** An option counts as what the meter shows within this share of the largest one … Source: common practice. */
const NEAR_SHARE = 0.05;
/** … or within this much, whichever is more, in V, A and Ω. Source: common practice. */
const NEAR: Readonly<Record<string, number>> = { V: 0.3, A: 0.02, Ω: 1 };

/** What a meter shows, with its unit and in words. */
function shown(meter: string, { reading }: Played): Figure & { readonly text: string } {
  if (meter === 'volts') {
    const value = reading.volts('meter volts') ?? 0;
    return { value, unit: 'V', text: meterVoltsText(value) };
  }
  if (meter === 'ohms') {
    const value = reading.ohms ?? Infinity;
    return { value, unit: 'Ω', text: ohmsText(value) };
  }
  const value = reading.amps(`meter ${meter}`);
  return { value, unit: 'A', text: ampsText(value) };
}

/** Infinity is as far from Infinity as a figure from itself. */
const apart = (a: number, b: number): number => (a === b ? 0 : Math.abs(a - b));

/** The option nearest to what the meter shows; the engine's own figure where none is near enough. */
function nearest(options: readonly string[], { value, unit, text }: ReturnType<typeof shown>) {
  const figures = options.map((option) => ({ option, ...figure(option) }));
  const signed = figures.some((each) => each.value < 0);
  const met = signed ? value : Math.abs(value);
  const fit = figures
    .filter((each) => each.unit === unit)
    .toSorted((a, b) => apart(a.value, met) - apart(b.value, met))[0];
  const sizes = figures.map((each) => Math.abs(each.value)).filter(Number.isFinite);
  const near = Math.max(NEAR_SHARE * Math.max(...sizes, 0), NEAR[unit] as number);
  return fit && apart(fit.value, met) <= near ? fit.option : text;
}

/** What does a meter read: an ammeter by its name, `volts` or `ohms`? */
export const reads = questionKind({
  key: 'reads',
  schema: v.strictObject({
    meter: v.string("'volts', 'ohms' or the name of a meter in a wire"),
    options: v.pipe(
      v.array(optionSchema, optionAllowed),
      v.minLength(2, 'two to four options'),
      v.maxLength(4, 'two to four options')
    )
  }),
  asked: ({ meter, options }) => [{ id: `meter ${meter}`, options }],
  answer: ({ meter, options }, played) => ({
    [`meter ${meter}`]: nearest(options, shown(meter, played))
  }),
  names: ({ meter }) => [`meter ${meter}`],
  hides: ({ meter }) => [`meter ${meter}`]
});
