import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const root = join(import.meta.dirname, '..', '..');

/** Where the built site lies. */
export const build = join(root, 'build');

/** Serves a folder until it is ended, or until whoever started it is gone. */
const program = `
  const [script, folder] = process.argv.slice(1);
  const { serve } = await import(script);
  console.log(await serve(folder, 0));
  process.stdin.on('end', () => process.exit()).resume();
`;

/** A static server in a process of its own. */
export interface Server {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

/** Serves a folder on a free port of 127.0.0.1. */
export async function startServer(folder: string): Promise<Server> {
  const script = pathToFileURL(join(root, 'scripts', 'serve.js')).href;
  const child = spawn(process.execPath, ['--input-type=module', '-e', program, script, folder], {
    stdio: ['pipe', 'pipe', 'inherit']
  });
  const [first] = (await Promise.race([once(child.stdout, 'data'), once(child, 'exit')])) as [
    Buffer | number | null
  ];
  if (!Buffer.isBuffer(first)) throw new Error(`The server of ${folder} did not start.`);
  return {
    url: first.toString().trim(),
    async stop() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill();
      await once(child, 'exit');
    }
  };
}
