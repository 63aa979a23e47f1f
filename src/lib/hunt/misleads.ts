import type { Test } from './kinds';

const isRailToRail = ({ place }: Test): boolean => /^feed rail \S+ and return rail /.test(place);

/** By kind of test and outcome: what such a reading may seem to say, and does not. */
const words: Readonly<Record<string, (test: Test) => string | undefined>> = {
  'volts some': () =>
    'A meter draws next to nothing: a few volts may come through a lamp, a loco, or a long wire beside this one. Hold the test lamp there: if it stays dark, they are ghost volts.',
  'volts full': () =>
    'Full volts with nothing drawn prove no good joint. Hold the test lamp there: it draws what a loco draws.',
  'volts none': (test) =>
    isRailToRail(test)
      ? 'One rail that is joined to nothing floats, and the meter says nothing of the other. Try each rail by itself.'
      : undefined,
  'volts reversed': () => 'Is the red lead on the first point, and the knob turned east?',
  'testLamp dim': () =>
    'The lamp pulls the volts down: look for a bad joint on its way, and for a loco or coach in series with it.',
  'ohms buzz': (test) =>
    isRailToRail(test)
      ? 'A loco or a lit coach on this road conducts from rail to rail. Lift all stock off, and measure again.'
      : undefined,
  'ohms ohms': (test) =>
    isRailToRail(test)
      ? 'A motor or a coach lamp left on the road shows so many ohms. Lift all stock off, and measure again.'
      : 'Press the probes on bright metal: paint and flux show ohms too.',
  'panelLamp lit': () =>
    'A panel lamp shows its switch, not the rail: with a supply of its own it is lit though the road is dead.',
  'run still': () =>
    'Clean the rails and wheels, and try another loco, before you look for a fault in the wires.'
};

/** What a reading may seem to say and does not, in words; undefined where it does not mislead. */
export const misleads = (test: Test, outcome: string): string | undefined =>
  words[`${test.kind} ${outcome}`]?.(test);
