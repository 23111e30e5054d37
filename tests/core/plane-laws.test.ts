// Laws of plane geometry on random lines and arcs away from the origin, judged by points along them that are worked out here from
// centre, radius and angles (x = cx + r·cos, y = cy + r·sin), and by nothing of the code.
import { describe, expect, it } from 'vitest';
import {
  arcAngles,
  cornerAngle,
  curveLength,
  pointAlong,
  splitAtExtremes,
} from '../../packages/geometry/src/curve/along.ts';
import { type Box, boxesOverlap, lineMeetsBox } from '../../packages/geometry/src/curve/box.ts';
import { crossings, isOn } from '../../packages/geometry/src/curve/crossing.ts';
import { type Curve, flipCurve, line, shiftCurve, turnCurve } from '../../packages/geometry/src/curve/curve.ts';
import { curveBox, curveMeetsBox } from '../../packages/geometry/src/curve/curve-box.ts';
import { distanceTo } from '../../packages/geometry/src/curve/distance.ts';
import { heightAt, highOf, lowOf, type Piece, splitCurve } from '../../packages/geometry/src/curve/piece.ts';
import { chainLoops } from '../../packages/geometry/src/loop/chain-loops.ts';
import { crossingsAt, curvesBetween, curvesOutside, spanAt } from '../../packages/geometry/src/loop/clip.ts';
import { cropLoops } from '../../packages/geometry/src/loop/crop.ts';
import {
  type Loop,
  loopsBox,
  placeLoops,
  polygon,
  rectangle,
  reverseCurves,
} from '../../packages/geometry/src/loop/loop.ts';
import { poseDirection, poseLoops, posePoint } from '../../packages/geometry/src/loop/pose.ts';
import { findSelfCrossing } from '../../packages/geometry/src/loop/self-crossing.ts';
import { BoxTree } from '../../packages/geometry/src/offset/box-tree.ts';
import { offsetLoops } from '../../packages/geometry/src/offset/offset.ts';
import { splitAtCrossings } from '../../packages/geometry/src/offset/split.ts';
import { runsForward, upperEnvelope } from '../../packages/geometry/src/strips/envelope.ts';
import { momentsUnder } from '../../packages/geometry/src/strips/moments.ts';
import { walkStrips } from '../../packages/geometry/src/strips/strips.ts';
import { type Thread, threadChain } from '../../packages/geometry/src/strips/thread.ts';
import { bow, drawChain } from '../support/drawn-chain.ts';
import { Random } from '../support/random.ts';

type XY = readonly [number, number];

/** A curve with points of its own along it, from start to end. */
interface Drawn {
  readonly curve: Curve;
  readonly points: readonly XY[];
}

const STEPS = 720;

function drawLine([x0, y0]: XY, [x1, y1]: XY): Drawn {
  const at = (u: number): XY => [x0 + u * (x1 - x0), y0 + u * (y1 - y0)];
  return { curve: line(x0, y0, x1, y1), points: Array.from({ length: STEPS + 1 }, (_, k) => at(k / STEPS)) };
}

function drawArc(cx: number, cy: number, r: number, from: number, sweep: number): Drawn {
  const at = (u: number): XY => [cx + r * Math.cos(from + u * sweep), cy + r * Math.sin(from + u * sweep)];
  const [[x0, y0], [x1, y1]] = [at(0), at(1)];
  return {
    curve: { x0, y0, x1, y1, cx, cy, r, turn: sweep > 0 ? 1 : -1 },
    points: Array.from({ length: STEPS + 1 }, (_, k) => at(k / STEPS)),
  };
}

/** A line, or an arc of up to 340°, within some 20 mm of (30, 40); neither axis nor circle is anything special there. */
function drawAny(random: Random, spread = 12): Drawn {
  const place = (): XY => [30 + random.between(-spread, spread), 40 + random.between(-spread, spread)];
  if (random.unit() < 0.35) return drawLine(place(), place());
  const sweep = random.between(0.2, 5.9) * (random.unit() < 0.5 ? 1 : -1);
  return drawArc(...place(), random.between(2, 11), random.between(-3.1, 3.1), sweep);
}

function some(seed: number, count: number, spread?: number): Drawn[] {
  const random = new Random(seed);
  return Array.from({ length: count }, () => drawAny(random, spread));
}

const xsOf = ({ points }: Drawn) => points.map(([x]) => x);
const ysOf = ({ points }: Drawn) => points.map(([, y]) => y);
const gap = ([ax, ay]: XY, [bx, by]: XY) => Math.hypot(ax - bx, ay - by);
const nearest = ({ points }: Drawn, place: XY) => points.reduce((least, p) => Math.min(least, gap(p, place)), Infinity);

/** Points of an arc lie at most 0.1 mm apart here, and an arc leaves its chord by less than 2e-4 mm. */
const STEP = 0.1;
const BOW = 3e-4;

describe('on 60 random curves', () => {
  const all = some(11, 60);

  it('the box is that of the points along each', () => {
    for (const each of all) {
      const box = curveBox(each.curve);
      const sides = [
        Math.min(...xsOf(each)),
        Math.min(...ysOf(each)),
        Math.max(...xsOf(each)),
        Math.max(...ysOf(each)),
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

  it('the distance of a point is that of the nearest point along each', () => {
    const random = new Random(12);
    for (const each of all) {
      for (let n = 0; n < 6; n++) {
        const place: XY = [random.between(5, 55), random.between(15, 65)];
        const least = nearest(each, place);
        const found = distanceTo(each.curve, ...place);
        expect(found).toBeLessThan(least + 1e-9);
        expect(found).toBeGreaterThan(least - STEP);
      }
    }
  });

  it('a box is met by each that has a point in it, and by none that stays away', () => {
    const random = new Random(13);
    const seen = new Set<boolean>();
    for (const { curve, points } of all) {
      for (let n = 0; n < 8; n++) {
        const [x0, y0] = [random.between(15, 45), random.between(25, 55)];
        const box: Box = { x0, y0, x1: x0 + random.between(1, 9), y1: y0 + random.between(1, 9) };
        const by = random.oneOf([0, 1.5]);
        const within = (more: number) =>
          points.some(([x, y]) => x > box.x0 - more && x < box.x1 + more && y > box.y0 - more && y < box.y1 + more);
        if (within(by) !== within(by + STEP)) continue;
        seen.add(within(by));
        expect(curveMeetsBox(curve, box, by)).toBe(within(by));
        if (curve.turn === 0) expect(lineMeetsBox(curve.x0, curve.y0, curve.x1, curve.y1, box, by)).toBe(within(by));
      }
    }
    expect(seen.size).toBe(2);
  });

  it('its pieces run to the right, hold every point of it, and are as wide together as it goes to and fro', () => {
    for (const { curve, points } of all) {
      const pieces: Piece[] = [];
      splitCurve(curve, pieces);
      const offs = points
        .slice(1, -1)
        .map(([x, y]) =>
          pieces.reduce(
            (off, p) => (x >= p.x0 && x <= p.x1 ? Math.min(off, Math.abs(heightAt(p, x) - y)) : off),
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
        for (const axis of ['x', 'y'] as const)
          expect(new Set(steps.slice(1).map((p, k) => Math.sign(p[axis] - steps[k]![axis]))).size).toBe(1);
      }
    }
  });

  it('upright lines cross it where its points pass from one side to the other', () => {
    for (const each of all) {
      for (const x of [24.3, 30.1, 37.7]) {
        const places = passings(each.points, ([px]) => px - x);
        const found = crossingsAt(each.curve, x);
        expect(found).toHaveLength(places.length);
        found.forEach((at, k) => {
          expect(Math.abs(at - places[k]!)).toBeLessThan(1.5 / STEPS);
        });
        const span = spanAt([{ curves: [each.curve], closed: false }], x);
        const heights = places.map((at) => each.points[Math.round(at * STEPS)]![1]);
        if (places.length === 0) expect(span).toBeNull();
        // Next to its extreme a circle is steep: its height there is not known from a step.
        else if (isCrossedSteeply(each, x)) expect(Math.abs(span!.top - Math.min(...heights))).toBeLessThan(1);
      }
    }
  });

  it('runs forward along an axis where each step of it does', () => {
    const seen = new Set<boolean>();
    for (const [k, { curve, points }] of all.entries()) {
      const [ux, uy] = [Math.cos(k), Math.sin(k)];
      const steps = points.slice(1).map(([x, y], i) => (x - points[i]![0]) * ux + (y - points[i]![1]) * uy);
      const forward = steps.every((step) => step > 0);
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

/** The shares at which a value changes its sign from one point to the next. */
function passings(points: readonly XY[], value: (point: XY) => number): number[] {
  return points
    .slice(1)
    .map((p, k) => (value(points[k]!) > 0 !== value(p) > 0 ? (k + 0.5) / STEPS : null))
    .filter((at) => at !== null);
}

function isCrossedSteeply({ curve, points }: Drawn, x: number): boolean {
  return curve.turn === 0
    ? Math.abs(curve.x1 - curve.x0) > 1
    : Math.abs(Math.abs(x - curve.cx) - curve.r) > 0.2 && points.length > 0;
}

it('a point at an end of a curve is on it, and one 1e-9 mm beyond, however it was rounded; one 1e-8 mm beyond is not', () => {
  for (const { curve } of some(15, 60)) {
    const angle = Math.abs(arcAngles(curve).sweep);
    for (const [end, sign] of [
      [0, -1],
      [1, 1],
    ] as const) {
      const { x, y, dx, dy } = pointAlong(curve, end, angle);
      const beyond = (mm: number): XY => [
        x + (sign * mm * dx) / Math.hypot(dx, dy),
        y + (sign * mm * dy) / Math.hypot(dx, dy),
      ];
      for (const mm of [-1e-3, -1e-10, 0, 1e-10, 9e-10]) expect(isOn(curve, ...beyond(mm)), `${mm}`).toBe(true);
      for (const mm of [1e-8, 0.1, 1]) expect(isOn(curve, ...beyond(mm)), `${mm}`).toBe(false);
    }
  }
});

describe('two curves', () => {
  const pairs = some(21, 160, 6).flatMap((one, k, all) => (k % 2 === 0 ? [[one, all[k + 1]!] as const] : []));
  /** On which side of the line, or of the circle, a point lies: 0 on it. */
  const sideOf = (c: Curve, [x, y]: XY) =>
    c.turn === 0 ? (c.x1 - c.x0) * (y - c.y0) - (c.y1 - c.y0) * (x - c.x0) : Math.hypot(x - c.cx, y - c.cy) - c.r;

  it('cross where points of the one pass the other', () => {
    let met = 0;
    for (const [one, other] of pairs) {
      const places = passings(one.points, (p) => sideOf(other.curve, p))
        .map((at) => one.points[Math.round(at * STEPS)]!)
        .filter((place) => nearest(other, place) < STEP);
      // Whether they cross at an end is not known from points a step apart.
      const ends = [one, other].flatMap(({ points }) => [points[0]!, points[STEPS]!]);
      if (places.some((place) => ends.some((end) => gap(end, place) < 2 * STEP))) continue;
      const found = crossings(one.curve, other.curve);
      met += found.length;
      expect(found).toHaveLength(places.length);
      for (const { x, y } of found) {
        expect(Math.abs(sideOf(other.curve, [x, y]))).toBeLessThan(1e-6);
        expect(Math.min(...places.map((place) => gap(place, [x, y])))).toBeLessThan(STEP);
      }
    }
    expect(met).toBeGreaterThan(20);
  });

  it('are split there, each in as many parts as it is crossed, and one; nothing is lost', () => {
    for (const [one, other] of pairs) {
      const met = crossings(one.curve, other.curve).length;
      const parts = splitAtCrossings([one.curve, other.curve], []);
      expect(parts).toHaveLength(2 + 2 * met);
      const lengths = [one, other].reduce((sum, { curve }) => sum + curveLength(curve), 0);
      expect(parts.reduce((sum, c) => sum + curveLength(c), 0)).toBeCloseTo(lengths, 7);
      expect(splitAtCrossings([one.curve], [other.curve])).toHaveLength(1 + met);
    }
  });
});

/** A ring about (30, 40) of lines and flat bows that never crosses itself, with points along it. */
function drawRing(random: Random): { loop: Loop; points: XY[] } {
  const corners = 5 + Math.floor(4 * random.unit());
  const places = Array.from({ length: corners }, (_, k): XY => {
    const angle = ((k + 0.6 * random.unit()) / corners) * 2 * Math.PI;
    const far = random.between(9, 15);
    return [30 + far * Math.cos(angle), 40 + far * Math.sin(angle)];
  });
  const drawn = places.map((from, k) => {
    const to = places[(k + 1) % corners]!;
    return random.unit() < 0.4
      ? drawLine(from, to)
      : drawBow(from, to, random.between(0.2, 0.9) * random.oneOf([-1, 1]));
  });
  return {
    loop: { curves: drawn.map(({ curve }) => curve), closed: true },
    points: drawn.flatMap(({ points }) => points.slice(1)),
  };
}

/** The arc between two points that turns through an angle, anticlockwise where it is positive. */
function drawBow(from: XY, to: XY, sweep: number): Drawn {
  const { cx, cy, r } = bow(...from, ...to, sweep);
  return drawArc(cx, cy, r, Math.atan2(from[1] - cy, from[0] - cx), sweep);
}

/** Whether a point lies inside a fine polygon: a ray to the right crosses it an odd number of times. */
function isInside(points: readonly XY[], [x, y]: XY): boolean {
  return points.reduce((inside, [ax, ay], k) => {
    const [bx, by] = points[(k + 1) % points.length]!;
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !inside : inside;
  }, false);
}

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
        const wanted = points.filter((_, k) => k % 40 === 7).map(put);
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

describe('chains from left to right', () => {
  /** Five steps to the right from `x`, about 40 high. */
  const wander = (random: Random, x: number): XY[] =>
    Array.from({ length: 5 }).reduce<XY[]>(
      (way) => [...way, [way.at(-1)![0] + random.between(2, 5), way.at(-1)![1] + random.between(-1.2, 1.2)]],
      [[x, random.between(38, 41)]],
    );
  const random = new Random(41);
  const sets = Array.from({ length: 20 }, () =>
    Array.from({ length: 4 }, () => drawChain(random, wander(random, random.between(20, 27)))),
  );

  it('lie in every strip in the order of their heights, and cross in none', () => {
    for (const set of sets) {
      const threads: Thread[] = [];
      for (const [of, { chain }] of set.entries()) threadChain(chain, of, threads);
      let wide = 0;
      walkStrips(threads, 18, 50, ({ left, right, order, heights }) => {
        wide += right - left;
        for (const u of [0.1, 0.5, 0.9]) {
          const x = left + u * (right - left);
          const real = set.map(({ heightOf }) => heightOf(x));
          expect(order.map(({ of }) => of)).toEqual(
            [...real.keys()].filter((k) => real[k] !== null).sort((a, b) => real[a]! - real[b]!),
          );
          if (u === 0.5) for (const [k, t] of order.entries()) expect(heights[k]).toBeCloseTo(real[t.of]!, 9);
        }
      });
      expect(wide).toBeCloseTo(32, 9);
    }
  });

  it('have as their upper envelope the highest of them', () => {
    for (const set of sets) {
      const envelope = upperEnvelope(set.map(({ chain }) => chain));
      for (let n = 0; n < 20; n++) {
        const x = random.between(28, 31);
        const highest = Math.max(...set.map(({ heightOf }) => heightOf(x) ?? -Infinity));
        if (!Number.isFinite(highest)) continue;
        const top = envelope.find(({ x0, x1 }) => x0 <= x && x < x1)!;
        expect(heightAt(top, x)).toBeCloseTo(highest, 9);
      }
    }
  });

  it('have the area and the moments that a sum over thin strips has', () => {
    for (const set of sets)
      for (const { chain, heightOf } of set) {
        for (const depthFrom of [null, 90]) {
          const threads: Thread[] = [];
          threadChain(chain, 0, threads, depthFrom);
          const { low, high } = threads[0]!;
          const [from, to] = [chain[0]!.x0 + 0.4, chain.at(-1)!.x1 - 0.3];
          const n = 4000;
          const sum = { area: 0, x: 0, y: 0 };
          let [least, most] = [Infinity, -Infinity];
          for (let k = 0; k < n; k++) {
            const x = from + ((k + 0.5) / n) * (to - from);
            const y = depthFrom === null ? heightOf(x)! : depthFrom - heightOf(x)!;
            const strip = (y * (to - from)) / n;
            sum.area += strip;
            sum.x += x * strip;
            sum.y += (y / 2) * strip;
            [least, most] = [Math.min(least, y), Math.max(most, y)];
          }
          const found = momentsUnder(threads[0]!, from, to);
          for (const key of ['area', 'x', 'y'] as const) expect(found[key] / sum[key]).toBeCloseTo(1, 6);
          // Its least and greatest height hold it, and lie within a step of its ends' own.
          expect(low).toBeLessThan(least + 1e-9);
          expect(high).toBeGreaterThan(most - 1e-9);
          const ends = chain.flatMap((c) => [c.y0, c.y1]).map((y) => (depthFrom === null ? y : depthFrom - y));
          expect(low).toBeGreaterThan(Math.min(least, ...ends) - 0.01);
          expect(high).toBeLessThan(Math.max(most, ...ends) + 0.01);
        }
      }
  });
});

describe('a chain', () => {
  /** Lines and bows from place to place; it crosses itself where two that are no neighbours do. */
  function wander(random: Random): Drawn[] {
    let at: XY = [30, 40];
    let heading = random.between(-3, 3);
    return Array.from({ length: 2 + Math.floor(9 * random.unit()) }, () => {
      heading += random.between(-0.4, 1.8);
      const to: XY = [at[0] + 6 * Math.cos(heading), at[1] + 6 * Math.sin(heading)];
      const one =
        random.unit() < 0.5 ? drawLine(at, to) : drawBow(at, to, random.between(0.3, 1) * random.oneOf([-1, 1]));
      at = to;
      return one;
    });
  }

  it('crosses itself where points along it do, and nowhere else', () => {
    const random = new Random(51);
    const seen = { yes: 0, no: 0 };
    for (let n = 0; n < 60; n++) {
      const parts = wander(random);
      // Steps of both that cross, by the signs of four triangles.
      const coarse = parts.map(({ points }) => points.filter((_, k) => k % 24 === 0));
      const turn = ([ax, ay]: XY, [bx, by]: XY, [cx, cy]: XY) => (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      const meet = (a: XY, b: XY, c: XY, d: XY) =>
        turn(a, b, c) > 0 !== turn(a, b, d) > 0 && turn(c, d, a) > 0 !== turn(c, d, b) > 0;
      const crossed: XY[] = [];
      for (const [i, one] of coarse.entries())
        for (const other of coarse.slice(i + 1))
          for (let a = 1; a < one.length; a++)
            for (let b = 1; b < other.length; b++)
              if (gap(one[a]!, other[b - 1]!) > 1e-9 && meet(one[a - 1]!, one[a]!, other[b - 1]!, other[b]!))
                crossed.push(one[a]!);
      const found = findSelfCrossing(parts.map(({ curve }) => curve));
      if (found === 'tangled') throw new Error('so short a chain is not tangled');
      if (crossed.length === 0) seen.no++;
      else seen.yes++;
      expect(found !== null, `chain ${n}`).toBe(crossed.length > 0);
      if (found !== null) expect(Math.min(...crossed.map((p) => gap(p, [found.x, found.y])))).toBeLessThan(0.6);
    }
    expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(10);
  });
});

it('two boxes overlap, grown by so much, where they share a point along both axes', () => {
  const random = new Random(61);
  const seen = new Set<boolean>();
  for (let n = 0; n < 400; n++) {
    const [x, y, u, v] = [30, 40, 30, 40].map((at) => at + random.between(-4, 4)) as [number, number, number, number];
    const one = { x0: x, y0: y, x1: x + random.between(0.5, 4), y1: y + random.between(0.5, 4) };
    const other = { x0: u, y0: v, x1: u + random.between(0.5, 4), y1: v + random.between(0.5, 4) };
    const by = random.oneOf([0, 1]);
    // Their middles are nearer each other than half of both sizes together.
    const near = (a0: number, a1: number, b0: number, b1: number) =>
      Math.abs((a0 + a1) / 2 - (b0 + b1) / 2) < (a1 - a0 + b1 - b0) / 2 + by;
    const share = near(one.x0, one.x1, other.x0, other.x1) && near(one.y0, one.y1, other.y0, other.y1);
    seen.add(share);
    expect(boxesOverlap(one, other, by)).toBe(share);
  }
  expect(seen.size).toBe(2);
});

it.each([0, 1, 2, 3])(
  'a chain that crosses itself at a joint, square to itself, does cross itself: turned by %i right angles',
  (turns) => {
    // Up, over to the left, down, and back across the first line; the crossing lines meet on it.
    const chain = [
      line(35, 40, 35, 50),
      line(35, 50, 30, 50),
      line(30, 50, 30, 45),
      line(30, 45, 35, 45),
      line(35, 45, 40, 45),
    ];
    const [cos, sin] = [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ][turns] as [number, number];
    expect(findSelfCrossing(chain.map((c) => turnCurve(c, cos, sin)))).toEqual({
      x: 35 * cos - 45 * sin,
      y: 35 * sin + 45 * cos,
    });
    // One that goes back from there touches itself.
    const back = [...chain.slice(0, 4), line(35, 45, 30, 40)];
    expect(findSelfCrossing(back.map((c) => turnCurve(c, cos, sin)))).toBeNull();
  },
);

it.each([0, 1, 2, 3, 4, 5, 6, 7])(
  'most of a circle is split in order where rays meet it, wherever its gap is: at %i eighths',
  (eighth) => {
    const start = (eighth * Math.PI) / 4 + 0.3;
    for (const sweep of [5.9, -5.9]) {
      const { curve } = drawArc(30, 40, 7, start, sweep);
      const shares = [0.1, 0.35, 0.5, 0.62, 0.9];
      const rays = [4, 0, 2, 1, 3].map((k) => {
        const angle = start + shares[k]! * sweep;
        return line(
          30 + 5 * Math.cos(angle),
          40 + 5 * Math.sin(angle),
          30 + 9 * Math.cos(angle),
          40 + 9 * Math.sin(angle),
        );
      });
      const lengths = splitAtCrossings([curve], rays).map(curveLength);
      const wanted = [...shares, 1].map((share, k) => (share - (k === 0 ? 0 : shares[k - 1]!)) * 5.9 * 7);
      expect(lengths).toEqual(wanted.map((length) => expect.closeTo(length, 8)));
    }
  },
);

describe('a tree of boxes', () => {
  it.each([1, 7, 8, 9, 65, 300])('finds each of %i that meets a box, edges included, and no other', (count) => {
    const random = new Random(count);
    const made = (): Box => {
      const [x0, y0] = [random.between(20, 60), random.between(-30, 30)];
      return { x0, y0, x1: x0 + random.between(0, 6), y1: y0 + random.between(0, 6) };
    };
    const boxes = Array.from({ length: count }, made);
    const tree = new BoxTree(boxes);
    for (let n = 0; n < 20; n++) {
      const asked = made();
      const found: number[] = [];
      tree.search(asked, (id) => void found.push(id));
      const wanted = [...boxes.keys()].filter((k) => boxesOverlap(boxes[k]!, asked, 1e-12));
      expect(found.sort((a, b) => a - b)).toEqual(wanted);
    }
  });
});

it('the parallel of a ring round another one that runs the same way keeps its distance from the outside of that', () => {
  const rings = [rectangle({ x0: 0, y0: 0, x1: 60, y1: 60 }), rectangle({ x0: 20, y0: 20, x1: 26, y1: 26 })];
  const found = offsetLoops(rings, 15).flatMap(({ curves }) => curves);
  const places = found.flatMap((c) =>
    Array.from({ length: 41 }, (_, k) => pointAlong(c, k / 40, Math.abs(arcAngles(c).sweep))),
  );
  const apart = places.map(({ x, y }) =>
    Math.min(...rings.flatMap(({ curves }) => curves.map((c) => distanceTo(c, x, y)))),
  );
  expect(Math.min(...apart)).toBeGreaterThan(15 - 1e-6);
  expect(Math.max(...apart)).toBeLessThan(15 + 1e-6);
  // On the left side, 15 mm in and 5 mm beside the inner ring, it begins where the circle about (20, 26) is left: √(225 − 25) above that.
  const left = places.filter(({ x }) => x < 15.000001);
  expect(Math.min(...left.map(({ y }) => y))).toBeCloseTo(26 + Math.sqrt(200), 6);
});

it('a bow too tight for a parallel on its inside still has the round about its corners', () => {
  // A line to (40, 40), then off 60° to the right a bow of radius 2 that turns left: at 5 mm to the left it has no parallel, but the
  // corner is gone round at 5 mm.
  const bowed = drawArc(40 + 2 * Math.cos(Math.PI / 6), 40 + 2 * Math.sin(Math.PI / 6), 2, -Math.PI * (5 / 6), 1.2);
  const chain = [line(30, 40, 40, 40), bowed.curve];
  const found = offsetLoops([{ curves: chain, closed: false }], 5).flatMap(({ curves }) => curves);
  for (const degrees of [89, 80, 70]) {
    const angle = (degrees * Math.PI) / 180;
    const place: XY = [40 + 5 * Math.cos(angle), 40 + 5 * Math.sin(angle)];
    if (Math.min(...chain.map((c) => distanceTo(c, ...place))) < 5 - 1e-9) continue;
    expect(Math.min(...found.map((c) => distanceTo(c, ...place))), `${degrees}°`).toBeLessThan(1e-7);
  }
  for (const c of found)
    for (const u of [0, 0.3, 0.7, 1]) {
      const { x, y } = pointAlong(c, u, Math.abs(arcAngles(c).sweep));
      expect(Math.min(...chain.map((each) => distanceTo(each, x, y)))).toBeCloseTo(5, 6);
    }
});

describe('the parallel of open chains', () => {
  it('keeps its distance from their ends as well, on lines and arcs, on either side', () => {
    // A level line, one that comes down to 3 mm above it, a bow with a corner, and one that ends 9 mm above the level line, 4 mm above its
    // parallel at 5 mm.
    const chains = [
      [line(30, 40, 50, 40)],
      [line(40, 43, 40, 60)],
      [drawBow([52, 40], [60, 48], 1.2).curve, line(60, 48, 63, 41)],
      [line(31, 49, 31, 60)],
    ];
    const loops = chains.map((curves) => ({ curves, closed: false }));
    for (const distance of [5, -5, 2]) {
      const found = offsetLoops(loops, distance).flatMap(({ curves }) => curves);
      let apart: number[] = [];
      for (const c of found)
        for (let k = 0; k <= 40; k++) {
          const { x, y } = pointAlong(c, k / 40, Math.abs(arcAngles(c).sweep));
          apart.push(Math.min(...chains.flat().map((each) => distanceTo(each, x, y))));
        }
      apart = apart.map((d) => Math.abs(d - Math.abs(distance)));
      expect(Math.max(...apart)).toBeLessThan(1e-6);
    }
    // At 5 mm the first one's stops 5 mm before the upright and goes on 5 mm after it; before that it is broken up to √(25 − 16) past the
    // end that is 4 mm above it.
    const level = offsetLoops([loops[0]!, loops[1]!, loops[3]!], 5)
      .flatMap(({ curves }) => curves)
      .filter((c) => c.turn === 0 && c.y0 === c.y1);
    const ends = level.map((c) => [c.x0, c.x1].map((x) => Math.round(1000 * x) / 1000));
    expect(ends).toEqual([
      [34, 35],
      [45, 50],
    ]);
  });
});
