import { ampsText, roads, voltsText, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { hungriest, roadScene } from './road-scene';

/** Volts at full knob above which small motors and lamps are seldom made. Source: common practice. */
const MANY_VOLTS = 16;

/** Most that a supply for toys may give, VA. Source: IEC 61558-2-7; NEM 609:2010 cl. 6.1. */
const MOST_WATTS = 200;

/** A supply of the yard, as people name it. */
interface Named {
  readonly name: string;
  readonly volts: number;
  readonly limitAmps: number;
}

const supplies = ({ supply, second, lamps, lampSupply }: Yard): readonly Named[] => [
  { name: second ? 'first controller' : 'controller', ...supply },
  ...(second && second.shares === 'nothing'
    ? [{ name: 'second controller', ...second.supply }]
    : []),
  ...(lamps === 'own' ? [{ name: 'lamp supply', ...lampSupply, limitAmps: 0 }] : [])
];

function finding(yard: Yard, { name, volts, limitAmps }: Named): Finding {
  const watts = volts * limitAmps;
  const strong = watts > MOST_WATTS;
  const high = name !== 'lamp supply' && yard.scale !== 'O' && volts > MANY_VOLTS;
  const scene = roadScene({
    yard,
    roads: roads(yard).slice(0, 1),
    locos: [hungriest(yard).name]
  });
  return {
    grade: strong ? 'must fix' : high ? 'think' : 'fine',
    what: strong
      ? `The ${name} gives more power than a supply for model railways may.`
      : high
        ? `The ${name} gives more volts than is usual for ${yard.scale}.`
        : `The ${name} is within what is usual: ${volts} V DC.`,
    where: [name],
    amount:
      name === 'lamp supply'
        ? `${voltsText(volts)}, extra-low voltage`
        : `${voltsText(volts)} and up to ${ampsText(limitAmps)}, ${Math.round(watts)} W; at most ${MOST_WATTS} W and 24 V here`,
    why: strong
      ? 'So much power in a short starts fires before anything trips.'
      : high
        ? `Above ${MANY_VOLTS} V motors run hot and lamps burn out early.`
        : 'So low a voltage is safe to touch with dry hands.',
    cure: strong
      ? `Take a supply of at most ${MOST_WATTS} W, or set the limit to ${ampsText(MOST_WATTS / volts)}.`
      : high
        ? 'Make sure that every loco and lamp is made for it, or take a supply of 12 V.'
        : 'Use a ready-made, isolated one in its own closed case.',
    source: 'IEC 61558-2-7:2007; NEM 609:2010 cl. 6.1; above 16 V common practice',
    board: { yard, scene }
  };
}

/** Whether each supply is of the low and limited kind that a model railway may have. */
export const supply: Check = {
  id: 'supply',
  title: 'Is the supply right?',
  run: (yard) => supplies(yard).map((each) => finding(yard, each))
};
