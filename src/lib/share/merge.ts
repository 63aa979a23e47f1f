import type { Progress, Try } from './progress';

const textOf = ({ right, sure, day }: Try): string => JSON.stringify([right, sure, day]);

const countIn = (tries: readonly Try[], text: string): number =>
  tries.filter((each) => textOf(each) === text).length;

/** The tries of `b` that `a` lacks; two alike count as two. */
function lacking(a: readonly Try[], b: readonly Try[]): readonly Try[] {
  return b.filter((each, index) => {
    const text = textOf(each);
    return countIn(b.slice(0, index + 1), text) > countIn(a, text);
  });
}

const byDay = (tries: readonly Try[]): readonly Try[] =>
  [...tries].sort((a, b) => (a.day ?? 0) - (b.day ?? 0));

/** Both records in one, by day: no try is lost, and what both have is there once. */
export function merged(a: Progress, b: Progress): Progress {
  const ids = [...new Set([...Object.keys(a.calls), ...Object.keys(b.calls)])];
  const calls = ids.map((id) => {
    const [mine, theirs] = [a.calls[id] ?? [], b.calls[id] ?? []];
    return [id, byDay([...mine, ...lacking(mine, theirs)])] as const;
  });
  return { ...a, calls: Object.fromEntries(calls) };
}
