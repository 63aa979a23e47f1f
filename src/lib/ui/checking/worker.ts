/** A worker that runs the checks of the yard that it is sent. */
export const checksWorker = (): Worker =>
  new Worker(new URL('./checks.worker.ts', import.meta.url), { type: 'module' });
