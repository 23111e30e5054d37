// Parallel curves against two libraries that know nothing of ours: clipper2-ts offsets a fine polygon in place of lines and
// arcs, and @flatten-js/core measures how far the parallel lies from what it is parallel to.

import {
  type Chain,
  type Curve,
  curveLength,
  type Loop,
  line,
  offsetLoops,
  pointAt,
  polygon,
  rectangle,
} from '@fielded/geometry';
import flatten from '@flatten-js/core';
import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { Random } from '../support/random.ts';

/** Chords of the fine polygons, mm: areas then agree within 1.1e-5 mm² for each mm of girth. */
const CHORD = 4e-4;

/** Points along a curve, its end left out, no farther from the next than the chords allow. */
function flattened(curves: Chain): { x: number; y: number }[] {
  return curves.flatMap((c) => {
    const steps =
      c.turn === 0 ? 1 : Math.ceil(curveLength(c) / c.r / (2 * Math.acos(1 - Math.min(1, CHORD / c.r)))) || 1;
    return Array.from({ length: steps }, (_, k) => ({ ...pointAt(c, k / steps) }));
  });
}

function areaOfPoints(points: readonly { x: number; y: number }[]): number {
  return points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);
}

const areaOf = (loops: readonly Loop[]) => loops.reduce((sum, { curves }) => sum + areaOfPoints(flattened(curves)), 0);
const lengthOf = (loops: readonly Loop[]) =>
  loops.reduce((sum, { curves }) => sum + curves.reduce((part, c) => part + curveLength(c), 0), 0);

/** Area and girth of clipper's offset of the same loop; inwards where `distance` is positive. */
function clipped(loop: Loop, distance: number): { area: number; rings: number } {
  const rings = inflatePathsD([flattened(loop.curves)], -distance, JoinType.Round, EndType.Polygon, 2, 8, CHORD);
  return { area: rings.reduce((sum, ring) => sum + areaOfPoints(ring), 0), rings: rings.length };
}

function asFlatten(c: Curve) {
  if (c.turn === 0) return new flatten.Segment(new flatten.Point(c.x0, c.y0), new flatten.Point(c.x1, c.y1));
  const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
  const to = Math.atan2(c.y1 - c.cy, c.x1 - c.cx);
  return new flatten.Arc(new flatten.Point(c.cx, c.cy), c.r, from, to, c.turn > 0);
}

/** A ring about the origin, anticlockwise, of lines and of arcs that bulge and hollow: it never crosses itself. */
function randomRing(random: Random): Loop {
  const corners = 3 + Math.floor(random.unit() * 8);
  const points = Array.from({ length: corners }, (_, k) => {
    const angle = ((k + 0.8 * random.unit()) / corners) * 2 * Math.PI;
    const far = 20 + 60 * random.unit();
    return [far * Math.cos(angle), far * Math.sin(angle)] as const;
  });
  const curves = points.map(([x0, y0], k): Curve => {
    const [x1, y1] = points[(k + 1) % corners]!;
    const chord = Math.hypot(x1 - x0, y1 - y0);
    // A flat bow stays within the neighbourhood of its chord.
    const bow = (random.unit() - 0.5) * 0.16 * chord;
    if (random.unit() < 0.4) return line(x0, y0, x1, y1);
    const r = (chord * chord) / 8 / Math.abs(bow) + Math.abs(bow) / 2;
    const off = (r - Math.abs(bow)) * Math.sign(bow);
    const cx = (x0 + x1) / 2 - ((y1 - y0) / chord) * off;
    const cy = (y0 + y1) / 2 + ((x1 - x0) / chord) * off;
    return { x0, y0, x1, y1, cx, cy, r, turn: bow > 0 ? 1 : -1 };
  });
  return { curves, closed: true };
}

/** Whether two curves of a ring meet anywhere but where the one ends and the next starts. */
function crossesItself({ curves }: Loop): boolean {
  const shapes = curves.map(asFlatten);
  return shapes.some((a, i) =>
    shapes
      .slice(i + 1)
      .some((b, k) =>
        (a as flatten.Segment)
          .intersect(b as flatten.Segment)
          .some(
            ({ x, y }) =>
              !(k === 0 && Math.hypot(x - curves[i]!.x1, y - curves[i]!.y1) < 1e-6) &&
              !(i === 0 && k === shapes.length - 2 && Math.hypot(x - curves[0]!.x0, y - curves[0]!.y0) < 1e-6),
          ),
      ),
  );
}

describe('the parallel of a ring', () => {
  it('encloses what a clipping library makes of a fine polygon in its place', () => {
    const random = new Random(41);
    let tried = 0;
    let none = 0;
    for (let n = 0; n < 120; n++) {
      const ring = randomRing(random);
      const distance = (random.unit() < 0.3 ? -1 : 1) * (0.5 + 25 * random.unit());
      if (crossesItself(ring)) continue;
      tried++;
      const ours = offsetLoops([ring], distance);
      const theirs = clipped(ring, distance);
      const girth = lengthOf([ring]) + 50;
      expect(
        ours.every(({ closed }) => closed),
        `${n}`,
      ).toBe(true);
      expect(Math.abs(areaOf(ours) - theirs.area), `area of ${n}`).toBeLessThan(2e-5 * girth);
      if (ours.length === 0) none++;
    }
    expect(tried).toBeGreaterThan(100);
    expect(none).toBeGreaterThan(0);
  });

  it('lies at the distance from the ring everywhere, as another library measures it', () => {
    const random = new Random(42);
    for (let n = 0; n < 60; n++) {
      const ring = randomRing(random);
      const distance = (random.unit() < 0.5 ? -1 : 1) * (0.5 + 10 * random.unit());
      if (crossesItself(ring)) continue;
      const shapes = ring.curves.map(asFlatten);
      for (const { curves } of offsetLoops([ring], distance)) {
        for (const curve of curves) {
          for (const at of [0, 0.3, 0.7]) {
            const { x, y } = pointAt(curve, at);
            const point = new flatten.Point(x, y);
            const away = Math.min(...shapes.map((shape) => point.distanceTo(shape)[0]));
            expect(Math.abs(away - Math.abs(distance)), `${n}`).toBeLessThan(1e-7);
          }
        }
      }
    }
  });

  it('is known by hand for a rectangle, whichever way and however its corners go', () => {
    const box = rectangle({ x0: 0, y0: 0, x1: 10, y1: 6 });
    expect(areaOf(offsetLoops([box], 2))).toBeCloseTo(12, 9);
    expect(offsetLoops([box], 3)).toEqual([]);
    expect(offsetLoops([box], 4)).toEqual([]);
    // Outwards: sides, and a whole circle in four quarters.
    expect(lengthOf(offsetLoops([box], -2))).toBeCloseTo(32 + 4 * Math.PI, 9);
    const sharp = offsetLoops([box], -2, 'sharp');
    expect(areaOf(sharp)).toBeCloseTo(140, 9);
    expect(() => offsetLoops([box], Number.NaN)).toThrow(RangeError);
    expect(offsetLoops([box], 0)).toEqual([box]);
  });

  it('comes apart at a waist, and fills where it runs along itself', () => {
    const dumbbell = polygon([
      [0, 0],
      [10, 0],
      [10, 4],
      [20, 4],
      [20, 0],
      [30, 0],
      [30, 10],
      [20, 10],
      [20, 6],
      [10, 6],
      [10, 10],
      [0, 10],
    ]);
    expect(offsetLoops([dumbbell], 0.5)).toHaveLength(1);
    // At exactly half the waist's width its sides fall together and nothing is left of it.
    for (const distance of [1, 1.5]) {
      const parts = offsetLoops([dumbbell], distance);
      expect(parts).toHaveLength(2);
      expect(Math.abs(areaOf(parts) - clipped(dumbbell, distance).area)).toBeLessThan(1e-3);
    }
  });
});

describe('the parallel of an open chain', () => {
  it('is trimmed at its own crossing on the one side and goes round the corner on the other', () => {
    const corner: Loop = { curves: [line(0, 0, 10, 0), line(10, 0, 10, 10)], closed: false };
    const [inside] = offsetLoops([corner], 2);
    expect(inside!.closed).toBe(false);
    expect(inside!.curves.map(({ x0, y0, x1, y1 }) => [x0, y0, x1, y1].map((v) => Math.round(v * 1e9) / 1e9))).toEqual([
      [0, 2, 8, 2],
      [8, 2, 8, 10],
    ]);
    const [outside] = offsetLoops([corner], -2);
    expect(lengthOf([outside!])).toBeCloseTo(20 + Math.PI, 9);
    expect(lengthOf(offsetLoops([corner], -2, 'sharp'))).toBeCloseTo(24, 9);
  });
});
