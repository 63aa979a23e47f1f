import { describe, expect, test } from 'vitest';
import { panelLayout, panelTarget } from '../../src/lib/draw/panel';
import { toggleRoads } from '../../src/lib/yard';
import { near } from '../circuit/near';
import { yardOf } from '../yard/build';

const sizes = [1, 5, 12, 40].flatMap((deckRoads) =>
  [334, 640, 900].map((width) => ({ deckRoads, width }))
);

describe.each(sizes)('panelLayout: $deckRoads deck roads in $width px', ({ deckRoads, width }) => {
  const yard = yardOf({ deckRoads, stablingRoads: Math.min(deckRoads, 4) });
  const layout = panelLayout(yard, width);

  test('every toggle stands on the face, in road order, at least 24 px from the next', () => {
    expect(layout.toggles.map(({ road }) => road)).toEqual(toggleRoads(yard));
    expect(2 * layout.reach).toBeGreaterThanOrEqual(24);
    for (const { x, y } of [...layout.toggles, layout.knob]) {
      expect(x).toBeGreaterThan(18);
      expect(x).toBeLessThan(layout.width - 18);
      expect(y).toBeLessThan(layout.height - 28);
    }
    const places = layout.toggles.map(({ x, y }) => `${x.toFixed(1)} ${y}`);
    expect(new Set(places).size).toBe(places.length);
  });

  test('every road is painted inside the face, deck roads inside the deck', () => {
    for (const { y, west, east } of layout.roads) {
      expect(west).toBeLessThan(east);
      expect(y).toBeGreaterThan(24);
      expect(y).toBeLessThan(layout.toggles[0]?.y ?? 0);
    }
  });

  test('a pointer on a toggle, a painted road or the knob finds it', () => {
    for (const { road, x, y } of layout.toggles) {
      expect(panelTarget(layout, { x, y })).toBe(`toggle ${road}`);
    }
    for (const { road, west, east, y } of layout.roads) {
      expect(panelTarget(layout, { x: (west + east) / 2, y })).toBe(`road ${road}`);
    }
    expect(panelTarget(layout, layout.knob)).toBe('controller');
    expect(panelTarget(layout, { x: 2, y: 2 })).toBeUndefined();
  });
});

test('panelLayout: pushes stand where toggles would, without ON and OFF', () => {
  const layout = panelLayout(yardOf({ deckRoads: 3, switching: 'pushes' }), 640);
  expect(layout.toggles.map(({ place }) => place)).toEqual(['push A', 'push B', 'push C']);
  expect(layout.words).toEqual([]);
  expect(panelTarget(layout, layout.toggles[1] ?? layout.knob)).toBe('push B');
});

test.each([334, 640])('panelLayout: a full rotary selector stands clear in %i px', (width) => {
  const layout = panelLayout(
    yardOf({ deckRoads: 7, stablingRoads: 3, switching: 'rotary' }),
    width
  );
  const { positions } = layout.selector ?? { positions: [] };
  expect(layout.toggles).toEqual([]);
  expect(positions.map(({ position }) => position).join(' ')).toBe('off A B C D E F G R 1 2 3');
  const foot = layout.deck.y + layout.deck.height;
  for (const { letter, lamp, position } of positions) {
    for (const { x, y } of [letter, lamp]) {
      expect(y).toBeGreaterThan(foot);
      expect(y).toBeLessThan(layout.height - 10);
      expect(x).toBeLessThan(layout.knob.x - 30);
    }
    if (position !== 'off') expect(panelTarget(layout, letter)).toBe(`selector ${position}`);
  }
});

test('panelLayout: the face of a usual yard has the proportion of 300 × 160 mm', () => {
  const { width, height } = panelLayout(yardOf({ deckRoads: 5, stablingRoads: 4 }), 640);
  near(height / width, 160 / 300, { rel: 1e-6 });
});
