import { MOST_BYTES } from './limits.js';

/**
 * Why a request is not taken: the status and a sentence for whoever sent it. Made once each: a flood of bad
 * requests makes no stack traces.
 */
export class Refused extends Error {
  /**
   * @param {number} status
   * @param {string} words
   */
  constructor(status, words) {
    super(words);
    this.status = status;
  }
}

const refused = {
  tooLong: new Refused(413, `At most ${MOST_BYTES} bytes.`),
  noJson: new Refused(415, 'Send application/json.'),
  noObject: new Refused(400, 'The body is no JSON object.'),
  noVote: new Refused(400, 'A vote is { round, letter } and nothing else.'),
  noRound: new Refused(400, 'A round is { id, vote: 1 or 2, letters: 2 to 9 of A to Z, open }.')
};

/**
 * @param {import('node:http').IncomingMessage} request
 * @returns {Promise<string>}
 */
const textOf = (request) =>
  new Promise((resolve, reject) => {
    let text = '';
    request.setEncoding('utf8');
    request.on('data', (part) => {
      text += part;
      if (text.length > MOST_BYTES) reject(refused.tooLong);
    });
    request.on('end', () => resolve(text));
    request.on('error', reject);
  });

/**
 * The JSON body of a request.
 * @param {import('node:http').IncomingMessage} request
 * @returns {Promise<Record<string, unknown>>}
 * @throws Refused when it is too long, no JSON, or no object
 */
export async function bodyOf(request) {
  if (request.headers['content-type'] !== 'application/json') throw refused.noJson;
  if (Number(request.headers['content-length'] ?? 0) > MOST_BYTES) throw refused.tooLong;
  const text = await textOf(request);
  try {
    const body = JSON.parse(text);
    if (typeof body === 'object' && body !== null && !Array.isArray(body)) return body;
  } catch {
    // Told below.
  }
  throw refused.noObject;
}

/**
 * @param {Record<string, unknown>} body
 * @returns {{ round: number, letter: string }}
 */
export function voteOf({ round, letter, ...rest }) {
  const fits = Number.isInteger(round) && typeof letter === 'string' && letter.length <= 2;
  if (!fits || Object.keys(rest).length > 0) throw refused.noVote;
  return { round: /** @type {number} */ (round), letter };
}

/** Most letters of a round. */
const MOST_LETTERS = 9;

/**
 * @param {Record<string, unknown>} body
 * @returns {import('./room.js').Round}
 */
export function roundOf({ id, vote, letters, open }) {
  const isName = typeof id === 'string' && id.length > 0 && id.length <= 100;
  const isList =
    Array.isArray(letters) &&
    letters.length >= 2 &&
    letters.length <= MOST_LETTERS &&
    letters.every((letter) => /^[A-Z1-9]$/.test(letter));
  if (!isName || !isList || (vote !== 1 && vote !== 2) || typeof open !== 'boolean')
    throw refused.noRound;
  return { id, vote, letters, open };
}
