// Laws of rings of lines and arcs that are cropped, parted and moved,
// judged by points along them that are worked out from centre, radius and angles, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import { arcAngles, curveLength, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import type { Box } from '../../packages/geometry/src/curve/box.ts';
import { type Curve, flipCurve, shiftCurve, turnCurve } from '../../packages/geometry/src/curve/curve.ts';
import { distanceTo } from '../../packages/geometry/src/curve/distance.ts';
import { chainLoops } from '../../packages/geometry/src/loop/chain-loops.ts';
import { crossingsAt, curvesBetween, curvesOutside } from '../../packages/geometry/src/loop/clip.ts';
import { cropLoops } from '../../packages/geometry/src/loop/crop.ts';
import { type Loop, loopsBox, placeLoops, polygon, reverseCurves } from '../../packages/geometry/src/loop/loop.ts';
import { poseDirection, poseLoops, posePoint } from '../../packages/geometry/src/loop/pose.ts';
import { BOW, drawRing, drawSome, gap, isInside, STEP, type XY } from '../support/drawn-curves.ts';
import { Random } from '../support/random.ts';

describe('rings', () => {
  const random = new Random(31);
  const rings = Array.from({ length: 25 }, () => drawRing(random));
  const box: Box = { x0: 24, y0: 33, x1: 39.5, y1: 44 };
  /** How often a ray straight up from a point meets curves. */
  const metAbove = (curves: readonly Curve[], [x, y]: XY) =>
    curves.reduce(
      (sum, c) => sum + crossingsAt(c, x).filter((at) => pointAlong(c, at, Math.abs(arcAngles(c).sweep)).y > y).length,
      0,
    );

  it('cropped to a box bound what lies in both', () => {
    for (const { loop, points } of rings) {
      const { outline, cuts } = cropLoops([loop], box);
      for (let n = 0; n < 12; n++) {
        const place: XY = [random.between(16, 44), random.between(26, 54)];
        const inBox = place[0] > box.x0 && place[0] < box.x1 && place[1] > box.y0 && place[1] < box.y1;
        if (points.some((p) => gap(p, place) < STEP)) continue;
        expect(metAbove([...outline, ...cuts], place) % 2 === 1).toBe(inBox && isInside(points, place));
      }
      // Outline and cuts close: they can be joined into rings again.
      for (const { curves } of chainLoops([...outline, ...cuts])) {
        const [first, last] = [curves[0]!, curves.at(-1)!];
        expect(gap([first.x0, first.y0], [last.x1, last.y1])).toBeLessThan(1e-6);
      }
    }
  });

  it('with two legs in the box are cut along it once for each leg', () => {
    // A U 20 wide and 20 high with legs 4 wide, and a box that ends half way up and a quarter of the way in.
    const [u] = [
      polygon([
        [30, 40],
        [50, 40],
        [50, 60],
        [46, 60],
        [46, 44],
        [34, 44],
        [34, 60],
        [30, 60],
      ]),
    ];
    const { outline, cuts } = cropLoops([u!], { x0: 20, y0: 30, x1: 48, y1: 50 });
    const told = cuts.map((c) =>
      [
        [c.x0, c.y0],
        [c.x1, c.y1],
      ]
        .sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!)
        .flat(),
    );
    expect(told.sort((a, b) => a[0]! - b[0]!)).toEqual([
      [30, 50, 34, 50],
      [46, 50, 48, 50],
      [48, 40, 48, 50],
    ]);
    expect(outline.reduce((sum, c) => sum + curveLength(c), 0)).toBeCloseTo(18 + 10 + 6 + 12 + 6 + 0, 9);
  });

  it('are parted by boxes, and by upright lines, into what lies in them and what does not', () => {
    const other: Box = { x0: 36, y0: 41, x1: 50, y1: 47 };
    const long = (curves: readonly Curve[]) => curves.reduce((sum, c) => sum + curveLength(c), 0);
    const far = (points: readonly XY[], keep: (p: XY) => boolean) =>
      points.reduce((sum, p, k) => sum + (keep(p) ? gap(p, points[(k + 1) % points.length]!) : 0), 0);
    for (const { loop, points } of rings) {
      const inOne = ([x, y]: XY) => [box, other].some((b) => x > b.x0 && x < b.x1 && y > b.y0 && y < b.y1);
      expect(Math.abs(long(curvesOutside(loop.curves, [box, other])) - far(points, (p) => !inOne(p)))).toBeLessThan(
        0.5,
      );
      const between = far(points, ([x]) => x > 25 && x < 37);
      expect(Math.abs(long(curvesBetween([loop], 25, 37)) - between)).toBeLessThan(0.5);
    }
  });

  it('have a part outside of boxes for each time that they leave them, and no joint elsewhere', () => {
    const boxes: Box[] = [box, { x0: 36, y0: 41, x1: 50, y1: 47 }];
    let more = 0;
    for (const { curve, points } of drawSome(new Random(32), 80)) {
      const isIn = points.map(([x, y]) => boxes.some((b) => x > b.x0 && x < b.x1 && y > b.y0 && y < b.y1));
      const changes = [...isIn.keys()].filter((k) => k > 0 && isIn[k] !== isIn[k - 1]);
      // Next to a corner of a box it is not known from points.
      if ([0, ...changes, 720].some((k, i, all) => i > 0 && k - all[i - 1]! < 9)) continue;
      const runs = changes.filter((k) => !isIn[k]).length + (isIn[0] ? 0 : 1);
      if (runs > 1) more++;
      expect(curvesOutside([curve], boxes)).toHaveLength(runs);
    }
    expect(more).toBeGreaterThan(10);
  });

  it('moved, turned, mirrored and scaled have their points where each of those puts a point', () => {
    const [cos, sin] = [0.6, 0.8];
    for (const { loop, points } of rings.slice(0, 8)) {
      const pose = { xx: 2 * cos, xy: 2 * sin, yx: 2 * sin, yy: -2 * cos, x0: 7, y0: -11 };
      const cases: [Loop[], (p: XY) => XY][] = [
        [poseLoops(pose, [loop]), ([x, y]) => [2 * (cos * x + sin * y) + 7, 2 * (sin * x - cos * y) - 11]],
        [
          poseLoops({ xx: cos, xy: -sin, yx: sin, yy: cos, x0: -3, y0: 2 }, [loop]),
          ([x, y]) => [cos * x - sin * y - 3, sin * x + cos * y + 2],
        ],
        [placeLoops([loop], { scale: 3, x: 5, y: -4, mirrored: true }), ([x, y]) => [5 - 3 * x, 3 * y - 4]],
        [placeLoops([loop], { scale: 3, x: 5, y: -4 }), ([x, y]) => [5 + 3 * x, 3 * y - 4]],
        [[{ ...loop, curves: loop.curves.map((c) => flipCurve(c, 24)) }], ([x, y]) => [x, 24 - y]],
        [[{ ...loop, curves: loop.curves.map((c) => shiftCurve(c, 3, -8)) }], ([x, y]) => [x + 3, y - 8]],
        [
          [{ ...loop, curves: loop.curves.map((c) => turnCurve(c, cos, sin)) }],
          ([x, y]) => [cos * x - sin * y, sin * x + cos * y],
        ],
        [[{ ...loop, curves: reverseCurves(loop.curves) }], (p) => p],
      ];
      cases.forEach(([moved, put], n) => {
        const wanted = points.filter((_, k) => k % 90 === 7).map(put);
        for (const place of wanted)
          expect(Math.min(...moved[0]!.curves.map((c) => distanceTo(c, ...place))), `case ${n}`).toBeLessThan(1e-6);
        const sides = loopsBox(moved)!;
        const all = points.map(put);
        const seen = [
          Math.min(...all.map(([x]) => x)),
          Math.min(...all.map(([, y]) => y)),
          Math.max(...all.map(([x]) => x)),
          Math.max(...all.map(([, y]) => y)),
        ];
        for (const [k, side] of [sides.x0, sides.y0, sides.x1, sides.y1].entries())
          expect(Math.abs(side - seen[k]!)).toBeLessThan(4 * BOW);
      });
      expect(posePoint(pose, 5, 2)).toEqual({ x: 2 * (3 + 1.6) + 7, y: 2 * (4 - 1.2) - 11 });
      // The direction (1, 0) goes to (0.6, 0.8), and (0, 1) to (0.8, −0.6).
      expect(poseDirection(pose, 0)).toBeCloseTo(Math.atan2(0.8, 0.6), 12);
      expect(poseDirection(pose, Math.PI / 2)).toBeCloseTo(Math.atan2(-0.6, 0.8), 12);
    }
  });
});
