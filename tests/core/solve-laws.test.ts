// Laws of searching for a setting and of round figures, on random curves of lines whose every answer is known.
import { describe, expect, it } from 'vitest';
import { roundDown, roundSizes, roundUp } from '../../packages/core/src/report/round-sizes.ts';
import { roundSetting } from '../../packages/core/src/solve/round.ts';
import { searchSetting } from '../../packages/core/src/solve/search.ts';
import { findSetting, settingNames } from '../../packages/core/src/solve/settings.ts';
import { Random } from '../support/random.ts';
import { cut, plainJob, profile } from './joints-to-spread.ts';

/** A stretch of a figure: a line between two settings, or nothing. */
interface Leg {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
  readonly exists: boolean;
}

/** A figure made of lines over −12 to 12, joined or with jumps, that is missing over some stretches. */
function drawLegs(random: Random): Leg[] {
  const legs: Leg[] = [];
  let y = random.between(-5, 5);
  for (let x = -12; x < 12; ) {
    const x1 = Math.min(12, x + random.between(1.5, 7));
    const y1 = random.between(-5, 5);
    legs.push({ x0: x, x1, y0: y, y1, exists: random.unit() > 0.15 });
    x = x1;
    y = random.unit() < 0.3 ? random.between(-5, 5) : y1;
  }
  return legs;
}

const lineAt = ({ x0, x1, y0, y1 }: Leg, x: number) => y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);

describe('the search', () => {
  it('finds the nearest of all answers, or comes as near as any place does, on 300 random figures', () => {
    const random = new Random(91);
    let [answered, missed] = [0, 0];
    for (let i = 0; i < 300; i++) {
      const legs = drawLegs(random);
      const there = legs.filter(({ exists }) => exists);
      const read = (x: number) => {
        const leg = legs.find(({ x1 }) => x <= x1)!;
        return leg.exists ? lineAt(leg, x) : null;
      };
      const value = random.between(-6, 6);
      const from = random.between(-9, 9);
      const answers = there.flatMap((leg) => {
        const x = leg.x0 + ((value - leg.y0) / (leg.y1 - leg.y0)) * (leg.x1 - leg.x0);
        return x > leg.x0 && x <= leg.x1 ? [x] : [];
      });
      const { found, nearest, reachable } = searchSetting(read, value, from, -12, 12);
      if (there.length === 0) {
        expect([found, nearest, reachable]).toEqual([null, null, null]);
        continue;
      }
      // What a step may pass over two at a time is left to the other tests: two answers, or one and a jump back over the value.
      const jumps = legs.slice(1).flatMap(({ x0, y0 }, k) => ((legs[k]!.y1 - value) * (y0 - value) < 0 ? [x0] : []));
      const passed = [...answers, ...jumps].sort((one, other) => one - other);
      const isPair = passed.some((one, k) => k > 0 && one - passed[k - 1]! < 0.75);
      if (isPair) continue;
      if (answers.length > 0) {
        const away = Math.min(...answers.map((x) => Math.abs(x - from)));
        expect(Math.abs(found!.setting - from), `${i}`).toBeCloseTo(away, 9);
        expect(found!.value).toBeCloseTo(value, 9);
        expect(nearest).toBe(found);
        answered++;
        continue;
      }
      expect(found).toBeNull();
      const heights = there.flatMap(({ y0, y1 }) => [y0, y1]);
      // A figure of lines that never has the value comes nearest to it at an end of one of them: a peak, a jump or where it ends.
      const miss = Math.abs(nearest!.value - value);
      expect(miss, `${i}`).toBeCloseTo(Math.min(...heights.map((y) => Math.abs(y - value))), 9);
      expect(nearest!.value).toBeCloseTo(read(nearest!.setting)!, 12);
      const [least, most] = reachable!;
      expect(least).toBeGreaterThan(Math.min(...heights) - 1e-9);
      expect(most).toBeLessThan(Math.max(...heights) + 1e-9);
      missed++;
    }
    expect(answered).toBeGreaterThan(40);
    expect(missed).toBeGreaterThan(10);
  });
});

describe('round figures', () => {
  it('are multiples of what a rule shows, no smaller or no larger, and the next one would be too far', () => {
    const random = new Random(92);
    for (let i = 0; i < 60; i++) {
      const mm = random.between(0, 80);
      for (const [units, step] of [
        ['mm', 0.1],
        ['in', 25.4 / 64],
      ] as const) {
        const [up, down] = [roundUp(mm, units), roundDown(mm, units)];
        for (const size of [up, down]) expect(Math.abs(size / step - Math.round(size / step))).toBeLessThan(1e-9);
        expect(up).toBeGreaterThanOrEqual(mm - 1e-6);
        expect(up).toBeLessThan(mm + step);
        expect(down).toBeLessThanOrEqual(mm + 1e-6);
        expect(down).toBeGreaterThan(mm - step);
        // A size that is on the rule stays, whatever rounding left of it.
        const on = Math.round(mm / step) * step;
        for (const size of [on - 1e-9, on, on + 1e-9])
          expect([roundUp(size, units), roundDown(size, units)]).toEqual([
            expect.closeTo(on, 9),
            expect.closeTo(on, 9),
          ]);
      }
      expect(roundSizes(mm, 'mm')).toEqual([expect.closeTo(Math.round(mm * 100) / 100, 9)]);
      const sizes = roundSizes(mm, 'in').map((size) => size / 25.4);
      expect(sizes).toEqual([
        expect.closeTo(Math.round((mm / 25.4) * 64) / 64, 9),
        expect.closeTo(Math.round((mm / 25.4) * 1000) / 1000, 9),
      ]);
    }
  });

  it('of a setting are the roundest whose figure is within 0.02 mm of what is wanted', () => {
    const random = new Random(93);
    const steps = { mm: [0.01, 0.001, 1e-6], in: [25.4 / 64, 0.0254, 0.00254, 2.54e-5] };
    for (let i = 0; i < 80; i++) {
      const exact = random.between(1, 60);
      const slope = random.oneOf([0.3, 1, 6, 40, 900]);
      const read = (setting: number) => slope * (setting - exact);
      for (const units of ['mm', 'in'] as const) {
        const round = roundSetting(exact, units, read, 0);
        const places = steps[units].map((step) => Math.round(exact / step) * step);
        const wanted = places.find((place) => Math.abs(read(place)) <= 0.02)!;
        expect(round.setting).toBeCloseTo(wanted, 9);
        expect(round.value).toBe(read(round.setting));
      }
    }
    // A figure that no setting has leaves the exact one.
    expect(roundSetting(3.21987654321, 'mm', () => null, 0)).toEqual({ setting: 3.21987654321, value: null });
  });
});

describe('a setting', () => {
  const job = plainJob({
    panel: { thickness: 20, measured: 19.5, sawn: 'flat' },
    cuts: [
      cut('flat', 'front', profile('ogee', 38, 9, 11, 1.5)),
      cut('over', 'back', profile('cove', 14, 4.8, 9), { run: 'over' }),
      cut('edge', 'front', profile('ogee', 38, 9, 11, 1.5), { tilt: Math.PI / 2 }),
      cut('tilted', 'front', profile('ogee', 38, 9, 11, 1.5), { tilt: 0.2 }),
    ],
  });

  it('is what the job has, set otherwise changes nothing else, and is written where it stands', () => {
    for (const name of settingNames(job)) {
      const setting = findSetting(job, name)!;
      expect(setting.set(setting.now), name).toEqual(job);
      expect(setting.least).toBeLessThan(setting.now);
      expect(setting.most).toBeGreaterThan(setting.now);
      const there = findSetting(setting.set(setting.now + 0.25), name)!;
      expect(there.now).toBeCloseTo(setting.now + 0.25, 12);
      const [first] = setting.writes(7);
      expect(first!.mm).toBe(7);
    }
    // Stock that measures half a millimetre less goes on doing so.
    const stock = findSetting(job, 'panel.thickness')!;
    expect(stock.set(18).panel).toMatchObject({ thickness: 18, measured: 17.5 });
    expect(stock.writes(18)).toEqual([
      { path: ['panel', 'thickness'], mm: 18 },
      { path: ['panel', 'measured'], mm: 17.5 },
    ]);
    // Groove and lips share the frame's 22 mm: 22 − 7.5 for the groove, 22 − 6.4 for the front lip.
    expect(findSetting(job, 'frame.groove.width')!.most).toBeCloseTo(14.5, 12);
    expect(findSetting(job, 'frame.groove.setback')!.most).toBeCloseTo(15.6, 12);
    expect(findSetting(job, 'frame.swellGap')!.most).toBeLessThan(11);
    expect(findSetting(job, 'frame.groove.depth')!.least).toBeGreaterThan(2);
  });

  it.each([
    // Flat under the stock a raised spindle cuts deeper, over it less deep; the fence gives the reach. On edge they change places.
    ['flat.depth', 'move.raise', 'move.lower'],
    ['over.depth', 'move.lower', 'move.raise'],
    ['flat.reach', 'move.fence-back', 'move.fence-forward'],
    ['edge.depth', 'move.fence-back', 'move.fence-forward'],
    ['edge.reach', 'move.raise', 'move.lower'],
    ['tilted.depth', 'move.deeper', 'move.less-deep'],
    ['tilted.reach', 'move.further-in', 'move.less-far-in'],
    ['frame.swellGap', 'move.smaller-panel', 'move.larger-panel'],
  ] as const)('%s grows by %s and shrinks by %s', (name, grow, shrink) => {
    expect(findSetting(job, name)).toMatchObject({ grow, shrink });
  });
});
