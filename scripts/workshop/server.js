import { randomBytes } from 'node:crypto';
import { createServer } from 'node:http';
import { siteHandler } from '../serve.js';
import { Doors } from './doors.js';
import { limits, MOST_CONNECTIONS } from './limits.js';

/** Slow senders are cut off, ms. */
const PATIENCE_MS = 10_000;

/**
 * @param {import('node:http').Server} server
 * @param {string} host
 * @param {number} port
 * @returns {Promise<number>} the port; one in use gives way to a free one
 */
function listening(server, host, port) {
  return new Promise((resolve, reject) => {
    server.on('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      if (error.code === 'EADDRINUSE' && port !== 0) server.listen((port = 0), host);
      else reject(error);
    });
    server.on('listening', () => {
      const at = server.address();
      resolve(typeof at === 'object' && at ? at.port : port);
    });
    server.listen(port, host);
  });
}

/**
 * Refuses connections of an address that has too many open.
 * @param {import('node:http').Server} server
 * @param {number} most
 */
function share(server, most) {
  /** @type {Map<string, number>} */
  const open = new Map();
  server.on('connection', (socket) => {
    const from = socket.remoteAddress ?? '';
    const count = (open.get(from) ?? 0) + 1;
    open.set(from, count);
    socket.on('close', () => {
      const left = (open.get(from) ?? 1) - 1;
      if (left > 0) open.set(from, left);
      else open.delete(from);
    });
    if (count > most) socket.destroy();
  });
}

/** Phones that ask for the vote are told on their way that there is a room. */
const VOTE = /^\/vote\/?$/;

/**
 * Serves the site in `root` with a room for votes beside it, in memory only.
 * @param {object} settings
 * @param {string} settings.root
 * @param {string} settings.host address to listen on
 * @param {number} settings.port
 * @param {(port: number) => string} settings.addressFor where phones find the site, for a port
 * @param {import('./limits.js').Limits} [settings.limits]
 */
export async function openWorkshop({ root, host, port, addressFor, limits: own = limits }) {
  const key = randomBytes(18).toString('base64url');
  const site = siteHandler(root);
  const server = createServer({ requestTimeout: PATIENCE_MS, headersTimeout: PATIENCE_MS });
  server.maxConnections = MOST_CONNECTIONS;
  share(server, own.connectionsPerAddress);
  const at = await listening(server, host, port);
  const phones = addressFor(at);
  const doors = new Doors({ key, address: `${phones}vote`, limits: own });
  server.on('request', (request, response) => {
    response.on('error', () => {});
    if (request.url?.startsWith('/room/')) {
      doors.answer(request, response).catch(() => response.destroy());
    } else if (VOTE.test(request.url ?? '')) {
      response.writeHead(302, { location: '/vote/?room' }).end();
    } else {
      site(request, response);
    }
  });
  return {
    phones,
    screen: `http://127.0.0.1:${at}/workshop/#room=${key}`,
    key,
    close() {
      doors.end();
      server.close();
      server.closeAllConnections();
    }
  };
}
