import { wireColours, type Yard } from '../yard';
import type { Wire } from './wires';

/** The leg whose colour a wire has. A lamp's wire is its feed as far as the LED. */
function legOf({ job, run, to }: Wire) {
  if (job !== 'lamp') return job;
  return run.startsWith('lamp feed ') || to.endsWith(', +') ? 'lampFeed' : 'lampReturn';
}

/** The colour of a wire in letters and in a word, "RD red"; empty where none is settled. */
export function colourText(yard: Yard, wire: Wire): string {
  const leg = legOf(wire);
  const settled = wireColours(yard).find((each) => each.wire === leg);
  return settled ? `${settled.code} ${settled.colour}` : '';
}

/** Where the colours come from, in a sentence. */
export function schemeWords({ colours: { scheme } }: Yard): string {
  if (scheme === 'none')
    return 'Colours are not settled: choose a scheme under My yard, or write your own here. Mark the number at both ends as well.';
  const from = scheme === 'NEM 605' ? 'NEM 605' : 'common practice; no world standard exists';
  return `Letters of colours after IEC 60757; colours after ${from}, but for those that are your own. Mark the number at both ends as well.`;
}
