import { fuseFor, wireAmps } from '../tables';
import { ampsText, type Yard } from '../yard';
import type { Check, Finding } from './finding';
import { hungriest } from './road-scene';

const runs = {
  main: 'wires to and from the controller',
  link: 'links of feed and return',
  dropper: 'droppers'
} as const;

function runFinding(yard: Yard, name: keyof typeof runs): Finding {
  const { size } = yard.wires[name];
  const { limitAmps, volts } = yard.supply;
  const may = wireAmps(size);
  const safe = limitAmps <= may;
  const load = Math.min(limitAmps, volts / hungriest(yard).ohms);
  const fuse = fuseFor(load, may);
  return {
    grade: safe ? 'fine' : 'must fix',
    what: safe
      ? `The controller's limit protects the ${runs[name]}.`
      : `Nothing protects the ${runs[name]}: the controller gives more than they may carry.`,
    where: [name],
    amount: `${size} may carry ${ampsText(may)}; the limit is ${ampsText(limitAmps)}`,
    why: 'A short in thin wire gets hot.',
    cure: safe
      ? 'Nothing to do.'
      : fuse === undefined
        ? 'Use a thicker wire: no fuse carries one loco and still protects this one.'
        : `Put a slow fuse of ${fuse} A in the feed near the controller, or use a thicker wire.`,
    source: 'IEC 60364-4-43, IB ≤ In ≤ Iz, from memory'
  };
}

/** Whether the controller's limit protects each wire behind it, and which fuse would. */
export const protection: Check = {
  id: 'protection',
  title: 'Is every wire protected in a short?',
  run: (yard) => (Object.keys(runs) as (keyof typeof runs)[]).map((name) => runFinding(yard, name))
};
