import { Agent, request, type IncomingMessage } from 'node:http';
import type { Workshop } from './server';

/** Connections of its own for each caller, as phones have. */
const agent = new Agent({ keepAlive: true, maxSockets: 400 });

interface Sent {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** Asks the server; resolves with its answer as soon as that begins. */
export const ask = (
  { url }: Pick<Workshop, 'url'>,
  path: string,
  { method = 'GET', headers = {}, body }: Sent = {}
): Promise<IncomingMessage> =>
  new Promise((resolve, reject) => {
    const sent = request(url, { path, method, headers, agent }, resolve);
    sent.on('error', reject);
    sent.end(body);
  });

/** Sends JSON; resolves with the status and the cookie set. */
export async function post(
  room: Pick<Workshop, 'url'>,
  path: string,
  value: unknown,
  headers: Readonly<Record<string, string>> = {}
): Promise<{ readonly status: number; readonly cookie: string; readonly says: string }> {
  const answer = await ask(room, path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: typeof value === 'string' ? value : JSON.stringify(value)
  });
  let text = '';
  for await (const part of answer) text += String(part);
  const cookie = answer.headers['set-cookie']?.[0]?.split(';')[0] ?? '';
  const { says = '' } = JSON.parse(text || '{}') as { says?: string };
  return { status: answer.statusCode ?? 0, cookie, says };
}

/** A stream of events, and the data of each name that came last. */
export interface Stream {
  readonly status: number;
  readonly last: (name: string) => unknown;
  /** Resolves once the newest data of that name fits. */
  readonly until: <T>(name: string, fits: (data: T) => boolean) => Promise<T>;
  /** Hears the data of that name each time. */
  readonly each: <T>(name: string, hear: (data: T) => void) => void;
  readonly drop: () => void;
}

/** Listens to a stream of events. */
export async function listen(
  room: Pick<Workshop, 'url'>,
  path: string,
  headers: Readonly<Record<string, string>> = {}
): Promise<Stream> {
  const answer = await ask(room, path, { headers });
  const last = new Map<string, unknown>();
  const waiting = new Set<() => void>();
  const hearing = new Map<string, ((data: unknown) => void)[]>();
  let text = '';
  answer.on('data', (part) => {
    const events = (text + String(part)).split('\n\n');
    text = events.pop() ?? '';
    for (const event of events) {
      const [, name, data] = /^event: (\w+)\ndata: (.*)$/.exec(event) ?? [];
      if (name === undefined || data === undefined) continue;
      last.set(name, JSON.parse(data));
      for (const hear of hearing.get(name) ?? []) hear(last.get(name));
    }
    for (const look of waiting) look();
  });
  answer.on('error', () => {});
  return {
    status: answer.statusCode ?? 0,
    last: (name) => last.get(name),
    until: <T>(name: string, fits: (data: T) => boolean) =>
      new Promise<T>((resolve) => {
        const look = () => {
          if (!last.has(name) || !fits(last.get(name) as T)) return;
          waiting.delete(look);
          resolve(last.get(name) as T);
        };
        waiting.add(look);
        look();
      }),
    each: (name, hear) =>
      void hearing.set(name, [...(hearing.get(name) ?? []), hear as (data: unknown) => void]),
    drop: () => answer.destroy()
  };
}

/** What the projector's page is told. */
export interface Tally {
  readonly address: string;
  readonly voters: number;
  readonly round: { readonly id: string; readonly vote: number } | null;
  readonly tallies: Readonly<Record<string, number>>;
}

/** What a phone is told. */
export interface Seen {
  readonly round: number;
  readonly letters: readonly string[];
  readonly vote: number;
  readonly open: boolean;
  readonly yours: string | null;
}

/** The projector's side of a room. */
export async function screenOf(room: Workshop) {
  const stream = await listen(room, `/room/tallies?key=${room.key}`);
  const set = (open: boolean, id = 'call', vote = 1) =>
    post(
      room,
      '/room/round',
      { id, vote, letters: ['A', 'B', 'C'], open },
      { 'room-key': room.key }
    );
  return { ...stream, set };
}

/** A phone that has joined and listens. */
export async function join(room: Pick<Workshop, 'url'>) {
  const { cookie } = await post(room, '/room/join', {});
  const stream = await listen(room, '/room/events', { cookie });
  const vote = (letter: string, round = (stream.last('round') as Seen).round) =>
    post(room, '/room/vote', { round, letter }, { cookie });
  return { ...stream, cookie, vote };
}
