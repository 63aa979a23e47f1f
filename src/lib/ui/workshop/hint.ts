import type { Question } from '../../predict';
import { vehicles } from '../../yard';
import type { View } from '../session.svelte';

/** One sentence that says how to look, and tells no answer. */
export function hintWords({ reads, testLamp, which, lamps }: Question): string {
  if (reads) return 'What is each probe joined to? Follow the wire from each one.';
  if (testLamp || lamps) return 'Follow the two wires of the lamp. Where does each one end?';
  if (which?.would === 'limit') return 'Where would feed and return meet with nothing between?';
  if (which) return 'Take each one by itself. Is there still a whole loop?';
  return 'Follow the loop with a finger: out by the feed, home by the return.';
}

/** The first of these places that the yard has now. */
export function hintPlace(look: readonly string[], { scene, reading }: View): string | undefined {
  const there = [
    'controller',
    ...Object.keys(vehicles(scene)),
    ...reading.runs.flatMap(({ parts }) => parts.map(({ id }) => id))
  ];
  return look.find((place) => there.includes(place)) ?? look.find((place) => /^road /.test(place));
}
