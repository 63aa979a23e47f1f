import { describe, expect, test } from 'vitest';
import { solve, type Circuit, type Element } from '../../src/lib/circuit';
import { leds, saturationFrom, voltmeterOhms } from '../../src/lib/tables';
import { circuitOf } from '../../src/lib/yard';
import { D, G, grounded, J, M, R, S, solved } from '../circuit/build';
import { near } from '../circuit/near';
import { moment } from './build';

/**
 * The truths of two-rail DC wiring for which the yard has no parts: lamps, a pulsed controller, two
 * controllers, diodes. Source: Kirchhoff's laws, the diode equation, common practice.
 */
const red = (id: string, ends: [string, string]): Element =>
  D(id, ends, saturationFrom(leds.red.volts, leds.red.testAmps), 2);

describe('circuit truths, on a plain circuit', () => {
  test('6, on a plain circuit: a short puts out the track, lamps on their own supply stay lit', () => {
    const { yard, scene } = moment(
      { deckRoads: 2 },
      { locos: { Plover: 'A' }, switches: { A: true, B: true }, controller: 1 }
    );
    const track = circuitOf(yard, scene);
    const lamps: Element[] = [
      G('lamp supply', ['lamp +', 'lamp -'], 12),
      R('lamp resistor', ['lamp +', 'lit'], 1000),
      red('lamp', ['lit', 'lamp -'])
    ];
    const trackLamp = [
      R('track resistor', ['feed', 'x'], 1000),
      red('track lamp', ['x', 'return'])
    ];
    const spanner = R('spanner', ['feed rail B', 'return rail B'], 0.05);
    const whole = (...more: Element[]): Circuit => ({
      ...track,
      elements: [...track.elements, ...lamps, ...trackLamp, ...more]
    });
    const [before, after] = [solve(whole()), solve(whole(spanner))];
    expect(before.limiting).toEqual([]);
    expect(after.limiting).toEqual(['controller']);
    near(before.amps('lamp'), 0.01, { rel: 1e-3 });
    expect(after.amps('lamp')).toBe(before.amps('lamp'));
    near(before.amps('track lamp'), 0.01, { rel: 0.05 });
    expect(after.amps('track lamp')).toBeLessThan(1e-4);
    expect(after.amps('Plover')).toBeLessThan(0.02);
  });

  test('10, on a plain circuit: a lamp loads a weak joint and shows it, a meter does not', () => {
    const through = (load: Element) =>
      solved(G('G', ['p', '0'], 12), R('bad joint', ['p', 'rail'], 5000), load).volts('rail');
    near(through(R('meter', ['rail', '0'], voltmeterOhms)), 12, { rel: 1e-3 });
    expect(through(R('lamp', ['rail', '0'], 150))).toBeLessThan(0.4);
  });

  test('10, on a plain circuit: a meter reads a pulsed controller as its average', () => {
    const steps = 100;
    const mean = [0.25, 0.5, 0.9].map((duty) => {
      const readings = Array.from({ length: steps }, (_, index) => {
        const closed = index < duty * steps;
        return solved(
          G('G', ['p', '0'], 12),
          S('pulse', ['p', 'rail'], 0.02, closed),
          R('bleed', ['rail', '0'], 1000),
          R('meter', ['rail', '0'], voltmeterOhms)
        ).volts('rail');
      });
      return readings.reduce<number>((sum, volts) => sum + (volts ?? NaN), 0) / steps;
    });
    for (const [index, volts] of [3, 6, 10.8].entries()) near(mean[index], volts, { rel: 1e-4 });
  });

  test.each([
    [12, 12, 0, 0.5],
    [12, -12, 24, 0.1],
    [6, -12, 18, 0.1]
  ])(
    '13, on a plain circuit: controllers at %d and %d V on one return: %d V between feeds, %d A home',
    (one, other, ...[apart, home]) => {
      const amps = { one: 0.3, other: 0.2 * Math.sign(other) };
      const s = solved(
        G('one', ['feed 1', 'joint'], one),
        G('other', ['feed 2', 'joint'], other),
        J('loco 1', ['feed 1', 'tail'], amps.one),
        J('loco 2', ['feed 2', 'tail'], amps.other),
        R('return wire', ['tail', 'joint'], 0.05),
        R('earth', ['joint', '0'], 1)
      );
      near(Math.abs(s.between('feed 1', 'feed 2') ?? NaN), apart, { abs: 1e-9 });
      near(s.amps('return wire'), home, { abs: 1e-9 });
      near(s.amps('return wire'), -s.amps('one') - s.amps('other'), { abs: 1e-9 });
    }
  );

  test('14, on a plain circuit: an LED lights one way round only; two back to back show the way', () => {
    const pair = (volts: number) => {
      const s = solved(
        G('G', ['p', '0'], volts),
        R('resistor', ['p', 'x'], 1000),
        red('east', ['x', '0']),
        red('west', ['0', 'x'])
      );
      return [s.amps('east'), s.amps('west')];
    };
    const [[east, dark], [dark2, west]] = [pair(12), pair(-12)] as [number[], number[]];
    near(east, 0.01, { rel: 1e-3 });
    near(west, 0.01, { rel: 1e-3 });
    for (const off of [dark, dark2]) expect(Math.abs(off ?? NaN)).toBeLessThan(1e-12);
  });

  test('14, on a plain circuit: a silicon diode drops about 0.7 V and passes one way', () => {
    // 1N400x-like: 0.7 V at 10 mA is the figure of the textbooks, its junction of ideality 1.
    const silicon = D('diode', ['p', 'rail'], saturationFrom(0.7, 0.01, 1), 1);
    const drive = (volts: number) =>
      solve(grounded(G('G', ['p', '0'], volts), silicon, M('loco', ['rail', '0'], 20)));
    const [on, off] = [drive(12), drive(-12)];
    near(on.between('p', 'rail'), 0.7, { abs: 0.12 });
    near(on.amps('loco'), (12 - (on.between('p', 'rail') ?? NaN)) / 20, { rel: 1e-9 });
    expect(Math.abs(off.amps('loco'))).toBeLessThan(1e-9);
  });
});
