/** What a workshop asks, in its order: calls named by lesson and step. */
export interface Plan {
  readonly id: string;
  readonly name: string;
  readonly minutes: number;
  /** Ids of calls with one thing to decide, three or four options and a twin. */
  readonly calls: readonly string[];
}

/** The plans that are offered; a round takes four to six minutes. Source: common practice. */
export const plans: readonly Plan[] = [
  {
    id: 'whole',
    name: 'Six calls and a bench',
    minutes: 45,
    calls: [
      '01-out-and-home/3',
      '03-a-switch-is-a-gap/5',
      '04-more-roads/4',
      '05-what-a-dead-road-still-has/3',
      '09-shorts/5',
      '15-thin-wire-bad-joint/3'
    ]
  },
  {
    id: 'short',
    name: 'Four calls',
    minutes: 30,
    calls: [
      '01-out-and-home/3',
      '04-more-roads/4',
      '05-what-a-dead-road-still-has/3',
      '09-shorts/5'
    ]
  }
];
