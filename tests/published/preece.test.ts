import { describe, expect, test } from 'vitest';
import { strandedSizes, wireAmps } from '../../src/lib/tables';
import { near } from '../circuit/near';

/** Preece 1888, from memory: copper melts at 80·d^1.5 A, ±30 %; 7.155, 13.145 and 28.284 A. */
describe('what melts a wire', () => {
  const preece = (mm: number) => 80 * mm ** 1.5;

  test.each([
    [0.2, 7.155],
    [0.3, 13.145],
    [0.5, 28.284]
  ])('%d mm: %d A', (mm, melts) => near(preece(mm), melts, { rel: 1e-3 }));

  test('lies far above what each stranded wire is let carry here', () => {
    for (const size of strandedSizes) {
      const strands = Number(size.split('/')[0]);
      expect(wireAmps(size), size).toBeLessThan((strands * preece(0.2) * 0.7) / 10);
    }
  });
});
