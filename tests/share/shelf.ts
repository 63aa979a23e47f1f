import type { Device, Storage, Stored } from '../../src/lib/share';

const named = (name: string): Error => Object.assign(new Error(name), { name });

/** A storage in memory with a quota in characters, which can be told to fail. */
export class Memory implements Storage {
  readonly kept = new Map<string, string>();
  quota = Infinity;
  /** Whether the next call fails; asked before each. */
  fails: () => boolean = () => false;

  private mayFail(): void {
    if (this.fails()) throw named('SecurityError');
  }
  get length(): number {
    this.mayFail();
    return this.kept.size;
  }
  key(index: number): string | null {
    this.mayFail();
    return [...this.kept.keys()][index] ?? null;
  }
  getItem(key: string): string | null {
    this.mayFail();
    return this.kept.get(key) ?? null;
  }
  setItem(key: string, text: string): void {
    this.mayFail();
    const others = [...this.kept].filter(([name]) => name !== key);
    const used = others.reduce((sum, [name, each]) => sum + name.length + each.length, 0);
    if (used + key.length + text.length > this.quota) throw named('QuotaExceededError');
    this.kept.set(key, text);
  }
  removeItem(key: string): void {
    this.mayFail();
    this.kept.delete(key);
  }
}

/** Tabs of one browser: one storage, one clock that goes on at each look, ids in a row. */
export function tabs(memory: Memory): (tab: string) => Device {
  let time = 0;
  let ids = 0;
  return (tab) => ({
    storage: () => memory,
    now: () => ++time,
    newId: () => `y${++ids}`,
    tab
  });
}

/** What was done; fails the test where nothing was. */
export function ok<T>(stored: Stored<T, unknown>): T {
  if ('wrong' in stored) throw new Error(stored.wrong);
  return stored.ok;
}

/** Two tabs of one browser. */
export function browser() {
  const memory = new Memory();
  const tab = tabs(memory);
  return { memory, one: tab('one'), two: tab('two') };
}
