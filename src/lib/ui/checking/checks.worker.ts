import { runChecks } from '../../checks';
import type { Job, WorkerTold } from './told';

/** Least time between two words of how far it is, ms: no eye reads faster. */
const EACH_MS = 50;

const tell = (told: WorkerTold) => self.postMessage(told);

self.onmessage = ({ data }: MessageEvent<Job>) => {
  try {
    let last = -Infinity;
    for (const told of runChecks(data.yard, data.options)) {
      const isProgress = told.about === 'faults' || told.about === 'pairs';
      const now = performance.now();
      if (isProgress && now - last < EACH_MS) continue;
      if (isProgress) last = now;
      tell(told);
    }
    tell({ about: 'end' });
  } catch (error) {
    tell({ about: 'trouble', words: error instanceof Error ? error.message : String(error) });
  }
};
