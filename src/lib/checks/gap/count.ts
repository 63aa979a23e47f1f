import { closesLoop, cone } from './loop';
import type { Network } from './network';
import type { Rails, Wiring } from './wiring';

/** A road under one placing of locos across the joints. */
export interface Case {
  readonly network: Network;
  readonly rails: Rails;
}

/** Cases whose switches overlap, with the switches they depend on. */
interface Cluster {
  readonly cases: readonly Case[];
  readonly switches: readonly number[];
}

/** Most switches that one road may depend on: beyond it settings are too many to try. */
const MOST_SWITCHES = 20;

/** A road that depends on more switches than can be tried. */
export class TooManyError extends Error {
  readonly code = 'too-many-switches';
  constructor(
    readonly where: string,
    readonly met: number
  ) {
    super(`Road ${where} depends on ${met} switches: at most ${MOST_SWITCHES} can be tried.`);
    this.name = 'TooManyError';
  }
}

/** Setting of the switches: bit k is the position of the k-th of `switches`. */
const madeIn =
  ({ switched }: Wiring, switches: readonly number[], setting: number) =>
  (contact: number): boolean => {
    const { by, made } = switched[contact] as Wiring['switched'][number];
    return ((setting >> switches.indexOf(by)) & 1) === made;
  };

/** Cases that some setting can make live, gathered where they share switches. */
export function clusters(cases: readonly Case[]): readonly Cluster[] {
  const found: Cluster[] = [];
  for (const each of cases) {
    const contacts = cone(each.network, each.rails);
    if (!contacts) continue;
    const own = new Set(contacts.map((c) => each.network.wiring.switched[c]?.by as number));
    const touched = found.filter(({ switches }) => switches.some((one) => own.has(one)));
    for (const other of touched) found.splice(found.indexOf(other), 1);
    found.push({
      cases: [...touched.flatMap((other) => other.cases), each],
      switches: [...new Set([...own, ...touched.flatMap((other) => other.switches)])]
    });
  }
  return found;
}

/** The settings of a cluster's switches under which one of its roads is live. */
export function unsafeSettings({ cases, switches }: Cluster): readonly number[] {
  if (switches.length > MOST_SWITCHES) {
    throw new TooManyError(cases[0]?.rails.name ?? '', switches.length);
  }
  return Array.from({ length: 2 ** switches.length }, (_, setting) => setting).filter((setting) =>
    cases.some(({ network, rails }) =>
      closesLoop(network, rails, madeIn(network.wiring, switches, setting))
    )
  );
}

/**
 * How many settings of all `total` switches make one of the cases live:
 * 2^total − Π(safe settings of a cluster) · 2^(switches in no cluster).
 */
export function unsafeCount(cases: readonly Case[], total: number): bigint {
  let safe = 1n;
  let left = total;
  for (const cluster of clusters(cases)) {
    const unsafe = unsafeSettings(cluster).length;
    safe *= BigInt(2 ** cluster.switches.length - unsafe);
    left -= cluster.switches.length;
  }
  return 2n ** BigInt(total) - safe * 2n ** BigInt(left);
}
