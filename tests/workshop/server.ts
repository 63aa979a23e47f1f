import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const scripts = join(import.meta.dirname, '..', '..', 'scripts', 'workshop');
const at = (file: string) => pathToFileURL(join(scripts, file)).href;

/** Opens a workshop on 127.0.0.1 until it is ended, or until whoever started it is gone. */
const program = `
  const [server, limits, root, shared, port] = process.argv.slice(1);
  const { openWorkshop } = await import(server);
  const { limits: own, sharedLimits } = await import(limits);
  const { phones, key } = await openWorkshop({
    root,
    host: '127.0.0.1',
    port: Number(port),
    addressFor: (port) => 'http://127.0.0.1:' + port + '/',
    limits: shared === 'shared' ? sharedLimits : own
  });
  console.log(JSON.stringify({ phones, key }));
  process.stdin.on('end', () => process.exit()).resume();
`;

/** A workshop's server in a process of its own. */
export interface Workshop {
  /** Where phones find the site, closed by a slash. */
  readonly url: string;
  readonly key: string;
  readonly stop: () => Promise<void>;
}

/** Serves the site in `root` with a room beside it; `shared` lets all phones come from one address, port 0 is a free one. */
export async function startWorkshop(
  root: string,
  limits: 'own' | 'shared' = 'shared',
  port = 0
): Promise<Workshop> {
  const args = ['--input-type=module', '-e', program, at('server.js'), at('limits.js')];
  const child = spawn(process.execPath, [...args, root, limits, String(port)], {
    stdio: ['pipe', 'pipe', 'inherit']
  });
  const [first] = (await Promise.race([once(child.stdout, 'data'), once(child, 'exit')])) as [
    Buffer | number | null
  ];
  if (!Buffer.isBuffer(first)) throw new Error('The workshop did not open.');
  const { phones, key } = JSON.parse(first.toString()) as { phones: string; key: string };
  return {
    url: phones,
    key,
    async stop() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill();
      await once(child, 'exit');
    }
  };
}
