/** A sound lesson; the number before each line is its line, and is not part of it. */
const numbered = `
 1|---
 2|title: A lesson
 3|minutes: 5
 4|can: Say what runs.
 5|terms: [toggle]
 6|rule: No loop, no loco.
 7|bench: Try it with a lamp.
 8|---
 9|
10|## First step
11|
12|Plover stands on A.
13|
14|\`\`\`board
15|yard: { deckRoads: 3 }
16|locos: { Plover: A, Heron: B }
17|controller: 60% east
18|edits: [ { off: return dropper C } ]
19|show: [rows]
20|\`\`\`
21|
22|\`\`\`call
23|ask: You switch road A on. What does Plover do?
24|do: { switch: { A: on } }
25|about: [Plover]
26|wrong:
27|  stays: { idea: M5, at: toggle A, say: "The loop is whole now." }
28|  west: { idea: M17, at: Plover, say: "The knob says east." }
29|reasons: [ "the loop is closed", "A is nearest", "it faces east" ]
30|twin:
31|  yard: { deckRoads: 2 }
32|  locos: { Curlew: B }
33|  edits: []
34|  do: { switch: { B: on } }
35|\`\`\`
36|
37|## Second step
38|
39|Look again.
`;

/** Where the sample is said to lie. */
export const file = 'content/lessons/99-sample.md';

export const sample = numbered.trim().replace(/^ ?\d+\|/gm, '');

/** Lines of the sample, the first is 1; each change puts other lines in the place of these. */
export function sampleWith(changes: Readonly<Record<number, string | readonly string[]>>): string {
  return sample
    .split('\n')
    .flatMap((line, index) => changes[index + 1] ?? line)
    .join('\n');
}
