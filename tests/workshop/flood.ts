import { connect } from 'node:net';
import type { Workshop } from './server';

const HEAD = 'Host: room\r\nContent-Type: application/json\r\n';
const posted = (path: string, body: string, more = '') =>
  `POST ${path} HTTP/1.1\r\n${HEAD}${more}Content-Length: ${body.length}\r\n\r\n${body}`;

/** Requests that are well-formed HTTP and none of them is to be taken. */
export const badRequests: readonly string[] = [
  posted('/room/vote', '{"round":1,"letter":"A"}'),
  posted('/room/vote', '{"round":1,"letter":"A"}', `Cookie: ohmyard-seat=${'x'.repeat(22)}\r\n`),
  posted('/room/join', '{"broken":'),
  posted('/room/join', '[]'),
  posted('/room/join', 'null'),
  posted('/room/round', '{}', `room-key: ${'k'.repeat(24)}\r\n`),
  posted('/room/round', '{"__proto__":{"open":true}}'),
  posted('/room/nowhere', '{}'),
  `GET /room/tallies?key=${'k'.repeat(24)} HTTP/1.1\r\n${HEAD}\r\n`,
  `GET /room/events HTTP/1.1\r\n${HEAD}\r\n`,
  `DELETE /room/round HTTP/1.1\r\n${HEAD}\r\n`,
  `GET /% HTTP/1.1\r\n${HEAD}\r\n`,
  `PUT / HTTP/1.1\r\n${HEAD}\r\n`
];

/** What breaks the connection: the server answers once and hangs up. */
export const broken: readonly string[] = [
  'not http at all\r\n\r\n',
  `GET /room/events HTTP/1.1\r\nCookie: ${'c'.repeat(40_000)}\r\n\r\n`,
  `POST /room/join HTTP/1.1\r\n${HEAD}Content-Length: -5\r\n\r\n`,
  `POST /room/join HTTP/1.1\r\n${HEAD}Transfer-Encoding: chunked\r\n\r\nzz\r\n`,
  `POST /room/join HTTP/1.1\r\n${HEAD}Content-Length: 999999999\r\n\r\n{`,
  '\u0000\u0001\u0002\r\n\r\n'
];

const refusal = /HTTP\/1\.1 4\d\d [^\r]*\r\n/g;

/** Sends a text on a connection of its own; resolves with the refusals that came back before it closed. */
export const refusals = ({ url }: Workshop, text: string, wanted = Infinity): Promise<number> =>
  new Promise((resolve) => {
    const socket = connect(Number(new URL(url).port), '127.0.0.1', () => socket.write(text));
    let [count, rest] = [0, ''];
    const end = () => resolve(count);
    socket.on('data', (part) => {
      const seen = rest + part.toString('latin1');
      count += seen.match(refusal)?.length ?? 0;
      // A status line cut in two is counted once it is whole.
      rest = seen.slice(seen.lastIndexOf('\r\n') + 2);
      if (count >= wanted) socket.end();
    });
    socket.on('close', end).on('error', end);
  });
