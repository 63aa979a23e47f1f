import { timingSafeEqual } from 'node:crypto';
import { Allowance } from './allowance.js';
import { votes } from './limits.js';
import { bodyOf, Refused, roundOf, voteOf } from './message.js';
import { VoteRoom } from './room.js';
import { PING_MS, Streams } from './streams.js';

/** The projector's page is told at most so often, ms. */
const TALLY_MS = 40;
const COOKIE = 'ohmyard-seat';
const inCookies = new RegExp(`(?:^|; )${COOKIE}=([\\w-]{22})(?:;|$)`);

/** @param {import('node:http').IncomingMessage} request */
const seatOf = ({ headers }) => inCookies.exec(headers.cookie ?? '')?.[1] ?? '';

/** @param {import('node:http').IncomingMessage} request */
const addressOf = ({ socket }) => socket.remoteAddress ?? '';

/**
 * @param {string} given
 * @param {string} key
 */
function isKey(given, key) {
  const [a, b] = [Buffer.from(given), Buffer.from(key)];
  return a.length === b.length && timingSafeEqual(a, b);
}

const refused = {
  tooMany: new Refused(429, 'Too many at once: wait.'),
  nowhere: new Refused(404, 'There is no such door.'),
  full: new Refused(503, 'The room is full.'),
  tooManyPages: new Refused(503, 'Too many pages are open here.'),
  tooManyChanges: new Refused(429, 'Too many changes: wait a second.'),
  closed: new Refused(409, 'This vote is closed.'),
  noSeat: new Refused(401, 'Join first.'),
  noKey: new Refused(403, "Only the projector's page may do this.")
};

/** All that is asked under `/room/`: phones join, listen and vote; who has the key opens and closes. */
export class Doors {
  #phones = new Streams();
  #screens = new Streams();
  /** @type {NodeJS.Timeout | undefined} */
  #soon;

  /**
   * @param {{ key: string, address: string, limits: import('./limits.js').Limits }} settings
   *   `address` is where phones vote, as the projector shows it
   */
  constructor({ key, address, limits }) {
    this.key = key;
    this.address = address;
    this.limits = limits;
    this.room = new VoteRoom(limits, (seat) => this.#phones.names.has(seat));
    this.requests = new Allowance(limits);
    this.votes = new Allowance(votes);
    this.clock = setInterval(() => this.#ping(), PING_MS);
  }

  /**
   * Answers a request under `/room/`.
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  async answer(request, response) {
    try {
      if (!this.requests.take(addressOf(request))) throw refused.tooMany;
      await this.#open(request, response);
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      if (error.status === 413) response.setHeader('connection', 'close');
      this.#reply(response, error.status, { says: error.message });
    }
  }

  /**
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  async #open(request, response) {
    const { pathname, searchParams } = new URL(request.url ?? '', 'http://room');
    const door = `${request.method} ${pathname}`;
    if (door === 'POST /room/join') return this.#join(request, response);
    if (door === 'GET /room/events') return this.#listen(request, response);
    if (door === 'POST /room/vote') return this.#vote(request, response);
    if (door === 'POST /room/round') return this.#round(request, response);
    if (door !== 'GET /room/tallies') throw refused.nowhere;
    this.#mustHold(searchParams.get('key'));
    this.#screens.begin(response, { name: 'screen', address: addressOf(request) });
    this.#tell();
  }

  /**
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  async #join(request, response) {
    await bodyOf(request);
    const known = seatOf(request);
    if (!this.room.has(known)) {
      const seat = this.room.join(addressOf(request));
      if (!seat) throw refused.full;
      response.setHeader('set-cookie', `${COOKIE}=${seat}; Path=/; HttpOnly; SameSite=Strict`);
    }
    this.#reply(response, 200, {});
  }

  /**
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  #listen(request, response) {
    const seat = this.#mustSit(request);
    const address = addressOf(request);
    if (this.#phones.countFrom(address) >= this.limits.streamsPerAddress)
      throw refused.tooManyPages;
    this.#phones.begin(response, { name: seat, address }, () => this.#tellSoon());
    this.#phones.say('round', (each) => this.room.seenFrom(each), seat);
    this.#tellSoon();
  }

  /**
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  async #vote(request, response) {
    const seat = this.#mustSit(request);
    if (!this.votes.take(seat)) throw refused.tooManyChanges;
    if (!this.room.vote(seat, voteOf(await bodyOf(request)))) throw refused.closed;
    this.#reply(response, 200, this.room.seenFrom(seat));
    this.#tellSoon();
  }

  /**
   * @param {import('node:http').IncomingMessage} request
   * @param {import('node:http').ServerResponse} response
   */
  async #round(request, response) {
    this.#mustHold(request.headers['room-key']);
    this.room.set(roundOf(await bodyOf(request)));
    this.#reply(response, 200, {});
    this.#phones.say('round', (seat) => this.room.seenFrom(seat));
    this.#tell();
  }

  /** @param {import('node:http').IncomingMessage} request */
  #mustSit(request) {
    const seat = seatOf(request);
    if (!this.room.has(seat)) throw refused.noSeat;
    return seat;
  }

  /** @param {unknown} given */
  #mustHold(given) {
    if (typeof given !== 'string' || !isKey(given, this.key)) throw refused.noKey;
  }

  /**
   * @param {import('node:http').ServerResponse} response
   * @param {number} status
   * @param {unknown} body
   */
  #reply(response, status, body) {
    if (response.headersSent) return;
    const text = JSON.stringify(body);
    response.writeHead(status, {
      'content-type': 'application/json',
      'content-length': Buffer.byteLength(text),
      'cache-control': 'no-store'
    });
    response.end(text);
  }

  #tell() {
    clearTimeout(this.#soon);
    this.#soon = undefined;
    const { address, room } = this;
    const voters = this.#phones.names.size;
    this.#screens.say('tally', () => ({ address, voters, ...room.counted }));
  }

  #tellSoon() {
    this.#soon ??= setTimeout(() => this.#tell(), TALLY_MS);
  }

  #ping() {
    for (const streams of [this.#phones, this.#screens]) streams.say('ping', () => 0);
  }

  /** Ends all streams and clocks. */
  end() {
    clearInterval(this.clock);
    clearTimeout(this.#soon);
    for (const streams of [this.#phones, this.#screens]) streams.end();
  }
}
