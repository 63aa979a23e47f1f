/** What is joined by new conductors: dead nodes, which count as one where they were joined, and live ones. */
export class Clumps {
  private readonly up = new Map<number, number>();
  /** Clumps with a live node in them. */
  private readonly live = new Set<number>();

  /** `dead` gives for a dead node what stands for those joined to it, and −1 for a live one. */
  constructor(private readonly dead: (node: number) => number) {}

  private of(node: number): number {
    const stands = this.dead(node);
    if (stands < 0) this.live.add(~node);
    return this.top(stands < 0 ? ~node : stands);
  }

  private top(clump: number): number {
    const up = this.up.get(clump);
    return up === undefined ? clump : this.top(up);
  }

  /** Joins two nodes; false where that may let a current flow: it closes a loop, or joins live to live. */
  join(a: number, b: number): boolean {
    const [one, other] = [this.of(a), this.of(b)];
    const isLive = (clump: number) => this.live.has(clump);
    if (one === other || (isLive(one) && isLive(other))) return false;
    if (isLive(one)) this.live.add(other);
    this.up.set(one, other);
    return true;
  }
}
