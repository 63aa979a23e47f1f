import jsQr from 'jsqr';
import { describe, expect, test } from 'vitest';
import { scanCode, type ScanCode } from '../../src/lib/ui/voting/code';

const PIXELS = 4;

/** A code as a camera sees it: RGBA, white paper, so many pixels a module. */
function seen({ side, path }: ScanCode): { data: Uint8ClampedArray; width: number } {
  const width = side * PIXELS;
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of path.matchAll(/M(\d+) (\d+)h1v1h-1z/g)) {
    for (let dy = 0; dy < PIXELS; dy++) {
      const from = ((Number(y) * PIXELS + dy) * width + Number(x) * PIXELS) * 4;
      for (let at = from; at < from + PIXELS * 4; at += 4) data.fill(0, at, at + 3);
    }
  }
  return { data, width };
}

describe('scanCode(text)', () => {
  test('has 21 modules and a quiet zone of 4 around them in version 1 (ISO/IEC 18004, 6.3.1 and 6.3.8)', () => {
    const { side, path } = scanCode('HELLO');
    expect(side).toBe(21 + 2 * 4);
    const all = [...path.matchAll(/M(\d+) (\d+)/g)].flatMap(([, x, y]) => [Number(x), Number(y)]);
    expect([Math.min(...all), Math.max(...all)]).toEqual([4, 24]);
  });

  test.each(['http://192.168.1.20:4180/vote', 'http://10.0.0.7:4180/vote', 'http://[fd00::1]/v'])(
    'a general-purpose reader reads %s from it',
    (address) => {
      const { data, width } = seen(scanCode(address));
      expect(jsQr(data, width, width)?.data).toBe(address);
    }
  );
});
