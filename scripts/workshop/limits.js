/**
 * How much the vote server takes. One address stands for one phone as a rule; behind a relay many phones
 * share one.
 * @typedef {object} Limits
 * @property {number} voters phones in the room
 * @property {number} seatsPerAddress phones behind one address
 * @property {number} streamsPerAddress open streams from one address
 * @property {number} connectionsPerAddress open connections from one address
 * @property {number} burst requests from one address at once
 * @property {number} perSecond requests from one address in the long run, 1/s
 */

/** Most open connections of all: a phone keeps one and opens a second for its vote. */
export const MOST_CONNECTIONS = 1000;

/** @type {Limits} */
export const limits = {
  voters: 200,
  seatsPerAddress: 4,
  streamsPerAddress: 8,
  connectionsPerAddress: 40,
  burst: 40,
  perSecond: 5
};

/** For a room whose phones all come through one address. @type {Limits} */
export const sharedLimits = {
  voters: limits.voters,
  seatsPerAddress: limits.voters,
  streamsPerAddress: limits.voters * 2,
  connectionsPerAddress: MOST_CONNECTIONS,
  burst: limits.burst * limits.voters,
  perSecond: limits.perSecond * limits.voters
};

/** Changes of one phone's vote at once, and in the long run, 1/s. */
export const votes = { burst: 6, perSecond: 2 };

/** Longest body of a request, bytes. */
export const MOST_BYTES = 1024;
