import type { Fault } from '../yard';
import type { Outcome, Test } from './kinds';
import { surely } from './kinds/kind';
import type { Stand } from './stand';

/** Tests which one goes through one after the other, and tells which of them shows something amiss. */
interface Round {
  readonly words: string;
  readonly isOf: (test: Test) => boolean;
}

/** Every round; what it looks for is what a sound yard does not show. */
const rounds: Readonly<Record<string, Round>> = {
  run: {
    words: 'Try a loco on every road in turn, with only that road switched on: which does not run?',
    isOf: ({ kind }) => kind === 'run'
  },
  panelLamp: {
    words: 'Switch on one road after the other and look at the panel lamps: which one is not lit?',
    isOf: ({ kind }) => kind === 'panelLamp'
  },
  'stray off': {
    words:
      'With everything switched off, try a loco on every road at every stop: where does one run?',
    isOf: ({ kind, moment }) => kind === 'stray' && moment.kind === 'off'
  },
  'stray own': {
    words:
      'Switch on one road after the other and try a loco on all that are off: when does one run?',
    isOf: ({ kind, moment }) => kind === 'stray' && moment.kind === 'own'
  },
  'pin drawn': {
    words:
      'Draw the pin at each stop and try a loco on the roads that it locks: where does one run?',
    isOf: ({ kind }) => kind === 'pin drawn'
  },
  across: {
    words:
      'Push a loco by hand across the joint at every stop: where does the controller go to its limit?',
    isOf: ({ kind }) => kind === 'across'
  }
};

/** Effort of a round against that of a look. Source: common practice. */
const ROUND_COST = 3;

/** One test of a round, and where it is made. */
interface Member {
  readonly stand: Stand;
  readonly test: Test;
}

/** A round as a place to test: which of its tests a suspect shows amiss. */
class RoundStand implements Stand {
  readonly tests: readonly Test[];
  private readonly known = new Map<string, object>();
  private readonly amiss = new Map<object, readonly number[]>();
  private readonly shown: object[] = [];

  constructor(
    key: string,
    words: string,
    private readonly members: readonly Member[]
  ) {
    const [first] = members as readonly [Member];
    const outcomes: readonly Outcome[] = [
      { id: 'none', words: 'none: all is as it should be' },
      ...members.map(({ test }) => ({ id: test.id, words: `only ${test.place}` })),
      { id: 'several', words: 'more than one' }
    ];
    const { scene } = first.test.moment;
    const moment = {
      id: `round ${key}`,
      kind: 'round',
      words: 'The knob is at full.',
      scene,
      roads: [],
      others: [],
      pairs: []
    } as const;
    const shares = (): readonly number[] => surely(0, outcomes.length);
    const test = {
      id: moment.id,
      kind: 'round',
      moment,
      words,
      cost: ROUND_COST,
      outcomes,
      shares
    };
    this.tests = [{ ...test, place: '' }];
  }

  of(suspect: number): object {
    return (this.shown[suspect] ??= this.find((stand) => stand.of(suspect)));
  }

  isBlindTo(suspect: number): boolean {
    return this.members.every(({ stand }) => stand.isBlindTo(suspect));
  }

  with(faults: readonly Fault[]): object {
    return this.find((stand) => stand.with(faults));
  }

  private find(showing: (stand: Stand) => object): object {
    const amiss: number[] = [];
    this.members.forEach(({ stand, test }, index) => {
      const [now, sound] = [showing(stand), stand.of(0)];
      if (now === sound) return;
      const [here, before] = [stand.sharesOf(test, now), stand.sharesOf(test, sound)];
      if (here.some((share, each) => share !== before[each])) amiss.push(index);
    });
    const key = amiss.length > 1 ? 'several' : amiss.join();
    const shown = this.known.get(key) ?? {};
    this.known.set(key, shown);
    this.amiss.set(shown, amiss);
    return shown;
  }

  sharesOf({ outcomes }: Test, shown: object): readonly number[] {
    const [first, ...more] = this.amiss.get(shown) ?? [];
    const index = more.length > 0 ? outcomes.length - 1 : first === undefined ? 0 : first + 1;
    return surely(index, outcomes.length);
  }
}

/** The rounds that can be made of these tests; the first suspect is the sound yard. */
export const roundsOf = (stands: readonly Stand[]): readonly Stand[] =>
  Object.entries(rounds).flatMap(([key, { words, isOf }]) => {
    const members = stands.flatMap((stand) =>
      stand.tests.filter(isOf).map((test) => ({ stand, test }))
    );
    return members.length > 1 ? [new RoundStand(key, words, members)] : [];
  });
