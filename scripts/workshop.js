import { join } from 'node:path';
import process from 'node:process';
import { build } from './build.js';
import { limits, sharedLimits } from './workshop/limits.js';
import { roomAddresses } from './workshop/network.js';
import { openWorkshop } from './workshop/server.js';

const root = join(import.meta.dirname, '..');
const [address, ...others] = roomAddresses();

build(root);
const room = await openWorkshop({
  root: join(root, 'build'),
  host: address === undefined ? '127.0.0.1' : '0.0.0.0',
  port: Number(process.env.PORT ?? 4180),
  addressFor: (port) => `http://${address ?? '127.0.0.1'}:${port}/`,
  limits: process.argv.includes('--shared') ? sharedLimits : limits
});
const port = new URL(room.phones).port;

console.log(`
The workshop is open.

  On this computer, for the projector:  ${room.screen}
  Keep that address to yourself: it opens and closes the votes.

  On the phones:  ${room.phones}vote${others.map((other) => `\n  or:             http://${other}:${port}/vote`).join('')}

What is open now: anyone in the same network as this computer can look at this site and vote, up to
${limits.voters} phones. Nothing else on this computer can be reached through it. Nobody is asked for a name, and
nothing is encrypted. Votes are kept in memory alone: nothing is stored.

End it with Ctrl-C: the site closes to the network and the votes are gone.`);
if (address === undefined) {
  console.log(
    '\nThis computer is in no network, so no phone can reach it. Letter cards do as well.'
  );
}
if (!process.argv.includes('--shared')) {
  console.log(
    '\nDo all phones come through one relay with one address? Then use: npm run workshop -- --shared'
  );
}
