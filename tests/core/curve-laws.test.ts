// Laws of single lines and arcs, random and away from the origin,
// judged by points along them that are worked out from centre, radius and angles, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import {
  arcAngles,
  cornerAngle,
  curveLength,
  pointAlong,
  splitAtExtremes,
} from '../../packages/geometry/src/curve/along.ts';
import { type Curve, line } from '../../packages/geometry/src/curve/curve.ts';
import { curveBox } from '../../packages/geometry/src/curve/curve-box.ts';
import { heightAt, highOf, lowOf, type Piece, splitCurve } from '../../packages/geometry/src/curve/piece.ts';
import { runsForward } from '../../packages/geometry/src/strips/envelope.ts';
import { BOW, drawArc, drawManyAwkward, drawSome, gap, STEPS } from '../support/drawn-curves.ts';
import { Random } from '../support/random.ts';

describe.each([
  ['random', drawSome(new Random(11), 60)],
  ['awkward', drawManyAwkward(new Random(14), 60)],
])('on 60 %s curves', (_, all) => {
  it('the box is that of the points along each', () => {
    for (const each of all) {
      const box = curveBox(each.curve);
      const sides = [
        Math.min(...each.points.map(([x]) => x)),
        Math.min(...each.points.map(([, y]) => y)),
        Math.max(...each.points.map(([x]) => x)),
        Math.max(...each.points.map(([, y]) => y)),
      ];
      [box.x0, box.y0, box.x1, box.y1].forEach((side, k) => {
        expect(Math.abs(side - sides[k]!), `side ${k}`).toBeLessThan(BOW);
      });
    }
  });

  it('points along each, its length and its angles are those it was drawn by', () => {
    for (const { curve, points } of all) {
      const { from, sweep } = arcAngles(curve);
      for (const k of [0, 100, 360, 500, 720]) {
        const { x, y, dx, dy } = pointAlong(curve, k / STEPS, Math.abs(sweep));
        expect(gap([x, y], points[k]!)).toBeLessThan(1e-9);
        const [ax, ay] = points[Math.max(0, k - 1)]!;
        const [bx, by] = points[Math.min(STEPS, k + 1)]!;
        expect(Math.hypot(dx, dy)).toBeCloseTo(curveLength(curve), 8);
        expect(Math.abs(dx * (by - ay) - dy * (bx - ax))).toBeLessThan(
          0.01 * Math.hypot(dx, dy) * gap([ax, ay], [bx, by]),
        );
        expect(dx * (bx - ax) + dy * (by - ay)).toBeGreaterThan(0);
      }
      const along = points.slice(1).reduce((sum, p, k) => sum + gap(p, points[k]!), 0);
      expect(curveLength(curve)).toBeCloseTo(along, 2);
      if (curve.turn !== 0)
        expect(
          gap([curve.cx + curve.r * Math.cos(from), curve.cy + curve.r * Math.sin(from)], points[0]!),
        ).toBeLessThan(1e-9);
    }
  });

  it('its pieces run to the right, hold every point of it, and are as wide together as it goes to and fro', () => {
    for (const { curve, points } of all) {
      const pieces: Piece[] = [];
      splitCurve(curve, pieces);
      if (curve.turn === 0 && curve.x0 === curve.x1) {
        expect(pieces).toEqual([]);
        continue;
      }
      const offs = points
        .slice(1, -1)
        .map(([x, y]) =>
          pieces.reduce(
            (off, p) => (x > p.x0 - 1e-12 && x < p.x1 + 1e-12 ? Math.min(off, Math.abs(heightAt(p, x) - y)) : off),
            Infinity,
          ),
        );
      expect(Math.max(...offs)).toBeLessThan(1e-6);
      for (const p of pieces) {
        expect(p.x1).toBeGreaterThan(p.x0);
        const heights = Array.from({ length: 41 }, (_, k) => heightAt(p, p.x0 + (k / 40) * (p.x1 - p.x0)));
        expect(lowOf(p)).toBeLessThan(Math.min(...heights) + 1e-9);
        expect(highOf(p)).toBeGreaterThan(Math.max(...heights) - 1e-9);
        expect([lowOf(p), highOf(p)].every((y) => y > Math.min(...heights) - 1 && y < Math.max(...heights) + 1)).toBe(
          true,
        );
      }
      const wide = pieces.reduce((sum, p) => sum + p.x1 - p.x0, 0);
      const toAndFro = points.slice(1).reduce((sum, [x], k) => sum + Math.abs(x - points[k]![0]), 0);
      expect(Math.abs(wide - toAndFro)).toBeLessThan(4 * BOW);
    }
  });

  it('split at its extremes it turns back in neither direction, and keeps its length', () => {
    for (const { curve } of all) {
      const parts = splitAtExtremes([curve]);
      expect(parts.reduce((sum, c) => sum + curveLength(c), 0)).toBeCloseTo(curveLength(curve), 9);
      for (const c of parts) {
        const angle = Math.abs(arcAngles(c).sweep);
        const steps = Array.from({ length: 9 }, (_, k) => pointAlong(c, k / 8, angle));
        expect(curveLength(c)).toBeGreaterThan(1e-9);
        for (const axis of ['x', 'y'] as const)
          expect(new Set(steps.slice(1).map((p, k) => Math.sign(p[axis] - steps[k]![axis]))).size).toBe(1);
      }
    }
  });

  it('runs forward along an axis where each step of it does', () => {
    const seen = new Set<boolean>();
    for (const [k, { curve, points }] of all.entries()) {
      const angle = k % 3 === 0 ? (k * Math.PI) / 2 : k;
      const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
      const steps = points.slice(1).map(([x, y], i) => (x - points[i]![0]) * ux + (y - points[i]![1]) * uy);
      const forward = steps.every((step) => step > -1e-11);
      seen.add(forward);
      expect(runsForward([curve], ux, uy)).toBe(forward);
    }
    expect(seen.size).toBe(2);
  });
});

it('a quarter circle runs forward along the way that it starts or ends square to, whatever rounding makes of it', () => {
  for (let k = 0; k < 100; k++) {
    const from = 0.7 + k / 9;
    for (const sign of [1, -1]) {
      const { curve } = drawArc(30, 40, 7, from, (sign * Math.PI) / 2);
      // From its first point it goes towards the centre, or towards its end's side of it.
      for (const [ux, uy] of [
        [-Math.cos(from), -Math.sin(from)],
        [-sign * Math.sin(from), sign * Math.cos(from)],
      ] as const) {
        expect(runsForward([curve], ux, uy)).toBe(true);
        expect(runsForward([curve], -ux, -uy)).toBe(false);
      }
      // A degree more, and it runs backwards there.
      const { curve: more } = drawArc(30, 40, 7, from - sign * 0.02, sign * (Math.PI / 2 + 0.02));
      expect(runsForward([more], -Math.cos(from), -Math.sin(from))).toBe(false);
    }
  }
});

it('the angle of a corner is that between the ways in and out, for lines and arcs', () => {
  const random = new Random(22);
  for (let n = 0; n < 60; n++) {
    const [heading, bend] = [random.between(-3, 3), random.between(0.01, 3.1)];
    const signed = bend * random.oneOf([-1, 1]);
    // A curve that arrives at (30, 40) along a heading, and one that leaves it along another.
    const arrive = (way: number, turn: number): Curve =>
      turn === 0
        ? line(30 - 5 * Math.cos(way), 40 - 5 * Math.sin(way), 30, 40)
        : drawArc(30 - turn * 4 * Math.sin(way), 40 + turn * 4 * Math.cos(way), 4, way - turn * (Math.PI / 2 + 1), turn)
            .curve;
    const leave = (way: number, turn: number): Curve => {
      const back = arrive(way + Math.PI, -turn);
      return { ...back, x0: back.x1, y0: back.y1, x1: back.x0, y1: back.y0, turn: -back.turn as Curve['turn'] };
    };
    const corner = cornerAngle(
      arrive(heading, random.oneOf([-1, 0, 1])),
      leave(heading + signed, random.oneOf([-1, 0, 1])),
    );
    expect(corner).toBeCloseTo(bend, 9);
  }
});
