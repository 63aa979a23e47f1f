import { describe, expect, test } from 'vitest';
import { deckRoom, leadMm } from '../../src/lib/yard';
import { yardOf } from './build';

/** Six roads and no release road, worked by hand: travel is five centres, the well seven of them and four more. */
describe('deckRoom(yard)', () => {
  test.each([
    [40, 200, 440],
    [57, 285, 627],
    [100, 500, 1100]
  ])('six roads at %d mm', (centresMm, travelMm, wellWidthMm) => {
    const yard = yardOf({ deckRoads: 6, runningRoad: 'direct', releaseRoad: false, centresMm });
    expect(deckRoom(yard)).toMatchObject({ travelMm, wellWidthMm });
  });

  test('the demo yard: 315 mm of travel, its release road 75 mm south of E', () => {
    const yard = yardOf({ deckRoads: 5, stablingRoads: 4 });
    expect(deckRoom(yard)).toEqual({ travelMm: 315, deckWidthMm: 375, wellWidthMm: 690 });
  });
});

/** A right triangle of sides 3, 4 and 5, and the spare. */
test('leadMm(travel, aside)', () => {
  expect(leadMm(600, 400)).toBe(650);
  expect(leadMm(0, 0)).toBe(150);
});
