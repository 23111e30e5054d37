// Laws of crossings, and of what is split at them, on random lines and arcs away from the origin,
// judged by points along them that are worked out from centre, radius and angles, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import { arcAngles, curveLength, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { crossings, isOn } from '../../packages/geometry/src/curve/crossing.ts';
import { type Curve, line, turnCurve } from '../../packages/geometry/src/curve/curve.ts';
import { crossingsAt, spanAt } from '../../packages/geometry/src/loop/clip.ts';
import { findSelfCrossing } from '../../packages/geometry/src/loop/self-crossing.ts';
import { splitAtCrossings } from '../../packages/geometry/src/offset/split.ts';
import {
  type Drawn,
  drawArc,
  drawBow,
  drawLine,
  drawManyAwkward,
  drawSome,
  gap,
  nearest,
  passings,
  STEP,
  STEPS,
  type XY,
} from '../support/drawn-curves.ts';
import { Random } from '../support/random.ts';

describe.each([
  ['random', drawSome(new Random(11), 60)],
  ['awkward', drawManyAwkward(new Random(14), 60)],
])('on 60 %s curves', (_, all) => {
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
});

function isCrossedSteeply({ curve, points }: Drawn, x: number): boolean {
  return curve.turn === 0
    ? Math.abs(curve.x1 - curve.x0) > 1
    : Math.abs(Math.abs(x - curve.cx) - curve.r) > 0.2 && points.length > 0;
}

it('upright lines through the ends of a curve, or past its side, do not cross it there', () => {
  // Whole numbers: circles of radius 5, 13 and 25 about (30, 40), each through points that lie on it exactly.
  const random = new Random(16);
  for (const r of [5, 13, 25]) {
    const steps = Array.from({ length: 2 * r + 1 }, (_, k) => k - r);
    const places = steps.flatMap((x) => steps.filter((y) => x * x + y * y === r * r).map((y): XY => [x, y]));
    for (let n = 0; n < 20; n++) {
      const [from, to] = [random.oneOf(places), random.oneOf(places)];
      if (from === to) continue;
      const turn = random.oneOf([-1, 0, 1] as const);
      const curve: Curve = {
        ...line(30 + from[0], 40 + from[1], 30 + to[0], 40 + to[1]),
        ...(turn !== 0 && { cx: 30, cy: 40, r, turn }),
      };
      const angle = ([x, y]: XY) => (Math.atan2(y, x) * (turn || 1)) / (2 * Math.PI);
      const share = (place: XY) => angle(place) - angle(from) - Math.floor(angle(place) - angle(from));
      for (const x of steps) {
        // On a line one place between its ends; of a circle the two places above x, where the arc passes them.
        const isBetween = x > Math.min(from[0], to[0]) && x < Math.max(from[0], to[0]);
        const y = Math.sqrt(r * r - x * x);
        const isPassed = (place: XY) => !(gap(place, from) < 1e-9 || gap(place, to) < 1e-9) && share(place) < share(to);
        const passed = y === 0 ? 0 : [y, -y].filter((each) => isPassed([x, each])).length;
        expect(crossingsAt(curve, 30 + x), `${from} ${to} ${turn} at ${x}`).toHaveLength(
          turn === 0 ? Number(isBetween) : passed,
        );
      }
    }
  }
});

it('a point at an end of a curve is on it, and one 1e-9 mm beyond, however it was rounded; one 1e-8 mm beyond is not', () => {
  for (const { curve } of drawSome(new Random(15), 60)) {
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
  const pairs = drawSome(new Random(21), 160, 6).flatMap((one, k, all) =>
    k % 2 === 0 ? [[one, all[k + 1]!] as const] : [],
  );
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
      const coarse = parts.map(({ points }) => points.filter((_, k) => k % 30 === 0));
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

it('an arc is split in order where rays meet it, wherever it starts, however far it goes', () => {
  const random = new Random(17);
  for (let n = 0; n < 80; n++) {
    const [start, sweep] = [random.between(-3.1, 3.1), random.between(1, 6) * random.oneOf([-1, 1])];
    const { curve } = drawArc(30, 40, 7, start, sweep);
    const shares = Array.from({ length: 6 }, (_, k) => (k + random.between(0.1, 0.9)) / 6);
    const rays = [4, 0, 5, 2, 1, 3].map((k) => {
      const angle = start + shares[k]! * sweep;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return line(30 + 5 * cos, 40 + 5 * sin, 30 + 9 * cos, 40 + 9 * sin);
    });
    const lengths = splitAtCrossings([curve], rays).map(curveLength);
    const wanted = [...shares, 1].map((share, k) => (share - (shares[k - 1] ?? 0)) * Math.abs(sweep) * 7);
    expect(lengths, `arc ${n}`).toEqual(wanted.map((length) => expect.closeTo(length, 8)));
  }
});
