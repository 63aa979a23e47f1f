import { because, way } from '../predict';
import {
  editWords,
  joinWords,
  knobWords,
  read,
  sentence,
  type Action,
  type Edit,
  type Scene,
  type Yard
} from '../yard';

/** What hands just did: "Road B on.", "Knob 7.2 V east." */
export function didWords(yard: Yard, before: Scene, action: Action): string {
  const thrown = Object.entries(action.switch ?? {}).map(
    ([road, on]) => `Road ${road} ${on ? 'on' : 'off'}.`
  );
  const knob =
    action.controller === undefined
      ? []
      : [`Knob ${knobWords(action.controller, yard.supply.volts)}.`];
  return [...thrown, ...knob, ...editChanges(before.edits, action.edits)].join(' ');
}

function editChanges(
  before: readonly Edit[],
  after: readonly Edit[] | undefined
): readonly string[] {
  if (!after) return [];
  const has = (list: readonly Edit[], edit: Edit) =>
    list.some((each) => JSON.stringify(each) === JSON.stringify(edit));
  const made = after.filter((edit) => !has(before, edit)).map((edit) => sentence(editWords(edit)));
  const undone = before.some((edit) => !has(after, edit)) ? ['The wires are put right.'] : [];
  return made.length > 0 ? made : undone;
}

/** What the locos do after it, and why the first that stays does not move; at most 20 words with what was done. */
export function seenWords(yard: Yard, before: Scene, after: Scene): string {
  const names = Object.keys(after.locos);
  const ways = names.map((name) => ({ name, way: way(before, after, name) }));
  const moving = ways.filter((each) => each.way !== 'stays');
  const still = ways.find((each) => each.way === 'stays');
  const moves = moving.map((each) => `${each.name} moves ${each.way}`);
  return [
    ...(moves.length > 0 ? [`${joinWords(moves, 'and')}.`] : []),
    ...(still ? [`${still.name} stays: ${stayReason(yard, after, still.name)}.`] : [])
  ].join(' ');
}

function stayReason(yard: Yard, scene: Scene, name: string): string {
  const reading = read(yard, scene);
  const standing = scene.locos[name];
  const why = reading.why(standing?.road as string);
  if (why.state === 'one ink') return 'one ink on both rails';
  if (why.state === 'open')
    return why.breaks.length > 0 ? `open at ${why.breaks[0]}` : 'no way round';
  const volts = Math.abs(reading.between('feed', 'return') ?? 0);
  if (volts < 0.05) return 'the knob is at centre';
  return Math.abs(reading.amps(name)) > 0 && Math.abs(standing?.speed ?? 0) < 0.001
    ? 'held, or too few volts'
    : 'it stands';
}

/** Why each loco asked about did what it did, one sentence each, the same reason once. */
export const reasonsFor = (
  played: Parameters<typeof because>[0],
  locos: readonly string[]
): string => [...new Set(locos.map((name) => because(played, name)))].join(' ');
