import { runChecks } from '../../checks';
import type { Job, WorkerTold } from './told';

/** Faults between two words of how far it is. */
const EACH = 5;

const tell = (told: WorkerTold) => self.postMessage(told);

self.onmessage = ({ data }: MessageEvent<Job>) => {
  try {
    for (const told of runChecks(data.yard, data.options)) {
      if (told.about !== 'faults' || told.done % EACH === 0) tell(told);
    }
    tell({ about: 'end' });
  } catch (error) {
    tell({ about: 'trouble', words: error instanceof Error ? error.message : String(error) });
  }
};
