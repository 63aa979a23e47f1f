import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join as path } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ask, join, listen, post, screenOf, type Seen, type Tally } from './phone';
import { startWorkshop, type Workshop } from './server';

const site = mkdtempSync(path(tmpdir(), 'site-'));
writeFileSync(path(site, 'index.html'), 'a site');
writeFileSync(path(site, '404.html'), 'not here');

const VOTERS = 200;
const letterOf = (index: number) => ['A', 'B', 'C'][index % 3] as string;
const isOpen = (seen: Seen | null) => seen?.open === true;

describe('a room for as many as it holds', () => {
  let room: Workshop;
  beforeAll(async () => void (room = await startWorkshop(site)));
  afterAll(() => room.stop());

  test('200 phones vote at once: each is counted once, whatever it does next', async () => {
    const screen = await screenOf(room);
    const phones = await Promise.all(Array.from({ length: VOTERS }, () => join(room)));
    expect((await post(room, '/room/join', {})).status, 'the room is full').toBe(503);
    expect((await screen.set(true)).status).toBe(200);
    await Promise.all(phones.map(({ until }) => until('round', isOpen)));

    const first = await Promise.all(phones.map(({ vote }, index) => vote(letterOf(index))));
    expect(first.filter(({ status }) => status === 200)).toHaveLength(VOTERS);
    const sum = ({ tallies }: Tally) => Object.values(tallies).reduce((all, each) => all + each, 0);
    const whole = await screen.until<Tally>('tally', (tally) => sum(tally) === VOTERS);
    expect(whole).toMatchObject({ voters: VOTERS, tallies: { A: 67, B: 67, C: 66 } });

    const again = await Promise.all(phones.map(({ vote }) => vote('C')));
    expect(again.every(({ status }) => status === 200)).toBe(true);
    await screen.until<Tally>('tally', ({ tallies }) => tallies.C === VOTERS);
    expect(sum(screen.last('tally') as Tally)).toBe(VOTERS);

    expect((await screen.set(false)).status).toBe(200);
    expect((await phones[0]?.vote('A'))?.status, 'it is closed').toBe(409);
    expect((screen.last('tally') as Tally).tallies).toEqual({ A: 0, B: 0, C: VOTERS });
    for (const { drop } of [screen, ...phones]) drop();
  });

  test('a dropped phone comes back to its seat, its round and its letter; a dropped screen to its votes', async () => {
    const screen = await screenOf(room);
    await screen.set(true, 'dropped');
    await screen.until<Tally>('tally', ({ voters }) => voters === 0);
    const phone = await join(room);
    await phone.until('round', isOpen);
    await phone.vote('B');
    phone.drop();
    screen.drop();

    const back = await listen(room, '/room/events', { cookie: phone.cookie });
    expect(await back.until<Seen>('round', isOpen)).toMatchObject({ yours: 'B', vote: 1 });
    const { cookie } = await post(room, '/room/join', {}, { cookie: phone.cookie });
    expect(cookie, 'who has a seat gets no second one').toBe('');
    const other = await screenOf(room);
    await other.set(true, 'dropped');
    const tally = await other.until<Tally>('tally', ({ round }) => round?.id === 'dropped');
    expect(tally.tallies).toEqual({ A: 0, B: 1, C: 0 });
    await other.set(true, 'dropped', 2);
    expect(await back.until<Seen>('round', ({ vote }) => vote === 2)).toMatchObject({
      yours: null
    });
    await other.set(true, 'dropped', 1);
    const reopened = await back.until<Seen>('round', ({ vote }) => vote === 1);
    expect(reopened, 'a vote opened again after another goes on').toMatchObject({ yours: 'B' });
    const whole = await other.until<Tally>('tally', ({ tallies }) => tallies.B === 1);
    expect(whole.tallies).toEqual({ A: 0, B: 1, C: 0 });
    for (const { drop } of [back, other]) drop();
  });

  test('what is malformed, too long or not allowed is refused and changes nothing', async () => {
    const screen = await screenOf(room);
    await screen.set(true, 'refused');
    const phone = await join(room);
    const { round } = await phone.until<Seen>('round', isOpen);
    const { cookie } = phone;
    const vote = (value: unknown, headers = {}) =>
      post(room, '/room/vote', value, { cookie, ...headers });
    const refused: readonly (readonly [number, Promise<{ status: number }>])[] = [
      [400, vote('{"round":')],
      [400, vote('[1]')],
      [400, vote({ round: `${round}`, letter: 'A' })],
      [400, vote({ round, letter: 'A', name: 'me' })],
      [409, vote({ round, letter: 'Z' })],
      [429, vote({ round: round + 1, letter: 'A' })],
      [401, vote({ round, letter: 'A' }, { cookie: '' })],
      [401, vote({ round, letter: 'A' }, { cookie: `ohmyard-seat=${'x'.repeat(22)}` })],
      [413, post(room, '/room/join', { much: 'x'.repeat(2000) })],
      [415, post(room, '/room/join', {}, { 'content-type': 'text/plain' })],
      [403, post(room, '/room/round', {}, { 'room-key': 'ä'.repeat(24) })],
      [403, post(room, '/room/round', { id: 'mine', vote: 1, letters: ['A', 'B'], open: true })],
      [400, post(room, '/room/round', { id: 'x', vote: 3 }, { 'room-key': room.key })],
      [404, post(room, '/room/elsewhere', {})]
    ];
    const statuses = await Promise.all(refused.map(async ([, sent]) => (await sent).status));
    // The sixth of a phone's votes in a row is one too many for the long run, the fifth is not.
    const wanted = refused.map(([status]) => status);
    expect(statuses.filter((status, index) => index !== 5 && status !== wanted[index])).toEqual([]);
    expect([409, 429]).toContain(statuses[5]);
    expect((await ask(room, '/room/tallies?key=guess')).statusCode).toBe(403);
    expect((screen.last('tally') as Tally).tallies).toEqual({ A: 0, B: 0, C: 0 });
    for (const { drop } of [screen, phone]) drop();
  });

  test('the site lies beside the room; a phone that asks for the vote is told there is one', async () => {
    const home = await ask(room, '/');
    expect([home.statusCode, home.headers['content-type']]).toEqual([
      200,
      'text/html; charset=utf-8'
    ]);
    const vote = await ask(room, '/vote');
    expect([vote.statusCode, vote.headers.location]).toEqual([302, '/vote/?room']);
    for (const bad of ['/%', '/..%2f..%2fetc%2fpasswd', '/%00', '//']) {
      expect([200, 400, 404], bad).toContain((await ask(room, bad)).statusCode);
    }
    expect((await ask(room, '/..%2f..%2f..%2fetc%2fpasswd')).statusCode).toBe(404);
  });
});

describe('a room with the limits of one phone an address', () => {
  let room: Workshop;
  beforeAll(async () => void (room = await startWorkshop(site, 'own')));
  afterAll(() => room.stop());

  test('one address gets four seats, so many changes, so many requests and no more', async () => {
    const screen = await screenOf(room);
    await screen.set(true);
    const seats = await Promise.all(Array.from({ length: 5 }, () => join(room)));
    expect(seats.map(({ status }) => status).sort()).toEqual([200, 200, 200, 200, 401]);
    const phone = seats.find(({ status }) => status === 200);
    const votes = await Promise.all(Array.from({ length: 10 }, () => phone?.vote('A', 1)));
    const count = (all: readonly ({ status: number } | undefined)[], wanted: number) =>
      all.filter((each) => each?.status === wanted).length;
    expect(count(votes, 200)).toBeGreaterThanOrEqual(5);
    expect(count(votes, 429)).toBeGreaterThanOrEqual(3);
    const many = [];
    for (let sent = 0; sent < 60; sent++) many.push(await post(room, '/room/x', {}));
    expect(count(many, 404) + count(many, 429)).toBe(60);
    expect(count(many, 429)).toBeGreaterThan(20);
    expect((screen.last('tally') as Tally).tallies).toEqual({ A: 1, B: 0, C: 0 });
    for (const { drop } of [screen, ...seats]) drop();
  });
});
