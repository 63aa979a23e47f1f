import { brokenReturn } from './families/brokenReturn';
import { chain } from './families/chain';
import { halfWay } from './families/halfWay';
import { lostLink } from './families/lostLink';
import { metalOnStuds } from './families/metalOnStuds';
import { oneInk } from './families/oneInk';
import { resistorMoved } from './families/resistorMoved';
import { spanner } from './families/spanner';
import { toggleAnywhere } from './families/toggleAnywhere';
import { whichWay } from './families/whichWay';
import { whoMoves } from './families/whoMoves';
import type { Family } from './family';

/** Every family of fresh calls, in the order of their lessons; a new one is one file and one name here. */
export const families: readonly Family[] = [
  brokenReturn,
  oneInk,
  resistorMoved,
  toggleAnywhere,
  metalOnStuds,
  whoMoves,
  whichWay,
  spanner,
  chain,
  halfWay,
  lostLink
];
