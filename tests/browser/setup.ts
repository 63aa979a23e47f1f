import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { build, startServer } from './server';

/** Serves the built site to all browser tests; what it returns ends that server. */
export default async function setup(): Promise<() => Promise<void>> {
  if (!existsSync(join(build, 'index.html'))) {
    throw new Error('build/index.html is not there. Build first: `npx vite build`, or `npm test`.');
  }
  const server = await startServer(build);
  process.env.OHMYARD_URL = server.url;
  return server.stop;
}
