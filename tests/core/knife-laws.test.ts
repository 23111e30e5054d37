// Laws of knives on random profiles and heads: the face in three dimensions by vectors, the steel and its limiter against places along the
// profile, the reach of a kept knife against a fine search, the steel at a setting against the setting's own arithmetic.

import type { Head } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { reportWall } from '../../packages/core/src/knife/describe-knife.ts';
import { clearEdge } from '../../packages/core/src/knife/edge-clearance.ts';
import { outlineExtent } from '../../packages/core/src/knife/extent.ts';
import { faceReach } from '../../packages/core/src/knife/face-reach.ts';
import { cuttingPoint, knifeFace, knifePoint, localRake } from '../../packages/core/src/knife/knife-face.ts';
import { limiterProfile } from '../../packages/core/src/knife/limiter-profile.ts';
import { depthsOf, leastDeviation } from '../../packages/core/src/knife/match-profiles.ts';
import { steelOrdinates } from '../../packages/core/src/knife/ordinates.ts';
import { moveTip, seeProfile, toCut } from '../../packages/core/src/knife/seen-profile.ts';
import { AS_DRAWN, findLip, setSteel } from '../../packages/core/src/knife/set-steel.ts';
import { lengthFromTip, steelLength, steelOutline } from '../../packages/core/src/knife/steel-outline.ts';
import { steelReach } from '../../packages/core/src/knife/wood-profile.ts';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { arc, type Chain, line } from '../../packages/geometry/src/curve/curve.ts';
import { distanceToChain } from '../../packages/geometry/src/curve/distance.ts';
import { heightAt } from '../../packages/geometry/src/curve/piece.ts';
import { upperEnvelope } from '../../packages/geometry/src/strips/envelope.ts';
import { drawChain } from '../support/drawn-chain.ts';
import { raiser } from '../support/heads.ts';
import { Random } from '../support/random.ts';

const heads = [
  { cuttingDiameter: 120, rake: 0.3, shear: 0.2 },
  { cuttingDiameter: 160, rake: 0.2, shear: -0.15 },
  { cuttingDiameter: 150, rake: 0, shear: 0 },
  { cuttingDiameter: 140, rake: 0.25, shear: 0 },
];

/** A profile from the edge inwards and up to the face, in cut coordinates, with the depth at each a. */
function drawProfile(random: Random) {
  const count = 4;
  const places = Array.from({ length: count + 1 }, (_, i): [number, number] => [
    i * 5 + (i > 0 && i < count ? random.between(-1, 1) : 0),
    i === count ? 0 : 9 - 2 * i + random.between(-0.7, 0.7),
  ]);
  return drawChain(random, places);
}

const along = (chain: Chain, count: number) =>
  chain.flatMap((c) => Array.from({ length: count + 1 }, (_, i) => pointAlong(c, i / count, arcAngle(c))));

describe('a point of a knife’s face', () => {
  it('cuts where vectors put it, and is found again from there', () => {
    const random = new Random(3);
    for (const head of heads)
      for (let n = 0; n < 20; n++) {
        const face = knifeFace(head);
        const [s, t] = [random.between(-25, 25), random.between(-3, 20)];
        // Right-handed axes: z along the spindle, u up the face, w = u × z. The tip lies R from the axis, R·sin γ of it along w.
        const r = head.cuttingDiameter / 2;
        const tip = { u: Math.sqrt(r * r - (r * Math.sin(head.rake)) ** 2), w: r * Math.sin(head.rake) };
        const point = { u: tip.u - t, w: tip.w + s * Math.sin(head.shear), z: s * Math.cos(head.shear) };
        const radius = Math.sqrt(point.u ** 2 + point.w ** 2);
        const found = cuttingPoint(face, { s, t });
        expect(found.station).toBeCloseTo(point.z, 10);
        expect(found.radius).toBeCloseTo(radius, 10);
        const back = knifePoint(face, point.z, radius);
        expect([back.s, back.t]).toEqual([expect.closeTo(s, 9), expect.closeTo(t, 9)]);
        // The rake there: between the face's up and the way out from the axis.
        expect(localRake(face, point.z, radius)).toBeCloseTo(Math.atan2(point.w, point.u), 9);
      }
  });
});

it('a radius that the face never comes as near the axis as is refused, with the value', () => {
  // R = 60, γ = 0.3: the face lies 17.7 mm off the axis.
  const face = knifeFace({ cuttingDiameter: 120, rake: 0.3, shear: 0 });
  for (const radius of [17, 0, -30])
    expect(() => knifePoint(face, 0, radius)).toThrow(`never reaches radius ${radius} mm`);
  expect(knifePoint(face, 0, 18).t).toBeGreaterThan(50);
});

it('the ends of a wall that rubs lie on the steel where the face cuts them', () => {
  const face = knifeFace({ cuttingDiameter: 120, rake: 0.3, shear: 0 });
  const wall = {
    straight: true,
    sideClearance: 0.02,
    undercut: false,
    draft: null,
    from: { a: 0, b: 0 },
    to: { a: 0, b: 0 },
  };
  const { onSteel, sideClearance } = reportWall(
    { ...wall, seenFrom: { x: -2, y: -4 }, seenTo: { x: -2, y: -10 } },
    face,
  );
  // 60·sin 0.3 off the axis the tip stands √(60² − off²) up the face, a place that cuts r stands √(r² − off²) up.
  const up = (r: number) => Math.sqrt(r * r - (60 * Math.sin(0.3)) ** 2);
  expect(onSteel.from).toEqual({ s: -2, t: expect.closeTo(up(60) - up(56), 9) });
  expect(onSteel.to).toEqual({ s: -2, t: expect.closeTo(up(60) - up(50), 9) });
  expect(sideClearance).toBeCloseTo((0.02 * 180) / Math.PI, 12);
});

it('a whole step nearer to a corner than a tenth of it is left out, at either end', () => {
  const listed = steelOrdinates({ chain: [line(0.95, -1, 6.05, -3)], tipStation: 0, tipReach: 0, tilt: 0 }, 1);
  expect(listed.map(({ s }) => s)).toEqual([0.95, 2, 3, 4, 5, 6.05]);
});

it('the face cuts a reach as great as the circle leaves beyond its own distance from the axis, less the gap behind it', () => {
  const face = knifeFace({ cuttingDiameter: 120, rake: 0.3, shear: 0 });
  const seen = (reach: number) => ({ chain: [line(0, 0, -8, -reach)], tipStation: 0, tipReach: 0, tilt: 0 });
  const most = 60 - 60 * Math.sin(0.3);
  expect(faceReach(seen(20), face)).toEqual({ reaches: true, greatest: expect.closeTo(most, 9) });
  expect(faceReach(seen(20), face, 1.1)).toEqual({ reaches: true, greatest: expect.closeTo(most - 1.1, 9) });
  expect([most - 0.5, most + 0.5].map((reach) => faceReach(seen(reach), face).reaches)).toEqual([true, false]);
  expect([most - 0.5, most - 1.6].map((reach) => faceReach(seen(reach), face, 1.1).reaches)).toEqual([false, true]);
});

it('ordinates of a slope far down the steel stand at whole steps along it, not at whole depths', () => {
  // Eight along for four down, from 20 to 24 mm off the tip line.
  const listed = steelOrdinates({ chain: [line(0.5, -20, 8.5, -24)], tipStation: 0, tipReach: 0, tilt: 0 }, 1);
  expect(listed.map(({ s }) => s)).toEqual([0.5, 1, 2, 3, 4, 5, 6, 7, 8, 8.5]);
  // The straight wall beside it is told by its two ends.
  expect(steelOrdinates({ chain: [line(3, -20, 3, -29)], tipStation: 0, tipReach: 0, tilt: 0 }, 1)).toEqual([
    { s: 3, t: 20 },
    { s: 3, t: 29 },
  ]);
});

describe('the steel of a profile', () => {
  it('holds the steel of every place along it, and is as long as these lie apart', () => {
    const random = new Random(5);
    for (const head of heads)
      for (let n = 0; n < 4; n++) {
        const face = knifeFace(head);
        const seen = seeProfile(drawProfile(random).chain, random.oneOf([0, Math.PI / 2, 0.7]));
        const steel = along(seen.chain, 60).map(({ x, y }) => knifePoint(face, x, face.radius + y));
        const { chain, deviation } = steelOutline(seen, face);
        const off = Math.max(...steel.map(({ s, t }) => distanceToChain(chain, s, t)));
        expect(off).toBeLessThan(Math.max(1e-9, 1.02 * deviation));
        const ts = steel.map(({ t }) => t);
        const [least, most] = [Math.min(...ts), Math.max(...ts)];
        expect(Math.abs(steelLength(seen.chain, face) - (most - least))).toBeLessThan(0.01);
        expect(Math.abs(lengthFromTip(seen.chain, face) - (most - Math.min(0, least)))).toBeLessThan(0.01);
      }
  });

  it('as the head sees it has its tip at 0, and every place goes back to where it was drawn', () => {
    const random = new Random(6);
    for (const tilt of [0, Math.PI / 2, 0.4, 1.2]) {
      const { chain } = drawProfile(random);
      const seen = seeProfile(chain, tilt);
      const [drawn, placed] = [along(chain, 12), along(seen.chain, 12)];
      const reaches = along(chain, 400).map(({ x, y }) => x * Math.cos(tilt) + y * Math.sin(tilt));
      expect(Math.max(...along(seen.chain, 400).map(({ y }) => y))).toBeCloseTo(0, 2);
      expect(seen.tipReach).toBeCloseTo(Math.max(...reaches), 2);
      for (const moved of [seen, moveTip(seen, -2, -3)]) {
        const there = along(moved.chain, 12);
        drawn.forEach((p, k) => {
          const { a, b } = toCut(moved, there[k]!.x, there[k]!.y);
          expect([a, b]).toEqual([expect.closeTo(p.x, 9), expect.closeTo(p.y, 9)]);
        });
      }
      // Stations along the spindle, b·cos − a·sin, lie as far apart as on the drawing.
      drawn.forEach((p, k) => {
        const station = p.y * Math.cos(tilt) - p.x * Math.sin(tilt);
        const way = tilt === Math.PI / 2 ? -1 : 1;
        expect(way * placed[k]!.x + seen.tipStation * way).toBeCloseTo(station, 9);
      });
      const [xs, ys] = [along(seen.chain, 400).map(({ x }) => x), along(seen.chain, 400).map(({ y }) => y)];
      const { width, height } = outlineExtent(seen.chain);
      expect(width).toBeCloseTo(Math.max(...xs) - Math.min(...xs), 2);
      expect(height).toBeCloseTo(Math.max(...ys) - Math.min(...ys), 2);
    }
  });
});

it('a limiter is the profile less a rhombus at every station, and its ends reach as far as the knife’s less the gap', () => {
  const random = new Random(7);
  const [gap, side] = [1.1, 0.6];
  // A rebate of two steps, which are upright to the head either way it is turned.
  const steps = [line(0, 9, 8, 9), line(8, 9, 8, 4), line(8, 4, 16, 3), line(16, 3, 16, 0)];
  // A tooth and a notch, whose flanks are steeper than the rhombus's sides.
  const tooth = [line(0, 6, 6, 6), line(6, 6, 7, 10), line(7, 10, 8, 6), line(8, 6, 16, 4), line(16, 4, 16, 0)];
  const notch = [line(0, 6, 6, 6), line(6, 6, 7, 2), line(7, 2, 8, 6), line(8, 6, 16, 4), line(16, 4, 16, 0)];
  // A half round that stands and one that is sunk: both flanks of each are steeper than the rhombus's sides in part.
  const round = (turn: 1 | -1) => [
    line(0, 6, 6, 6),
    arc(6, 6, 10, 6, 8, 6, turn),
    line(10, 6, 16, 4),
    line(16, 4, 16, 0),
  ];
  const given = [steps, tooth, notch, round(-1), round(1)].flatMap((chain) => [chain, chain]);
  for (let n = 0; n < 20; n++) {
    const { chain } = seeProfile(given[n] ?? drawProfile(random).chain, n % 2 === 0 ? 0 : Math.PI / 2);
    // An undercut counts as what it sweeps.
    const edge = along(upperEnvelope([chain]), 300);
    const limiter = limiterProfile(chain, gap, side);
    const stations = edge.map(({ x }) => x);
    const [from, to] = [Math.min(...stations) + side, Math.max(...stations) - side];
    for (const c of limiter) {
      if (Math.abs(c.x1 - c.x0) < 1e-6) continue;
      for (const u of [0.2, 0.5, 0.8]) {
        const { x, y } = pointAlong(c, u, arcAngle(c));
        expect(x > from - 1e-3 && x < to + 1e-3).toBe(true);
        // The lowest side of all rhombuses that stand on the profile at stations near this one.
        const lowest = edge
          .filter((p) => Math.abs(p.x - x) <= side)
          .reduce((least, p) => Math.min(least, p.y - gap * (1 - Math.abs(p.x - x) / side)), Infinity);
        expect(Math.abs(y - lowest)).toBeLessThan(0.03);
      }
    }
    // Upright at both ends, to the knife's own ends less the gap; nothing where the limiter is that low already.
    const ends = [limiter[0]!, limiter.at(-1)!];
    const tips = [
      [ends[0]!.x0, ends[0]!.y0, chain[0]!.y0],
      [ends[1]!.x1, ends[1]!.y1, chain.at(-1)!.y1],
    ] as const;
    for (const [x, y, own] of tips) {
      expect(Math.min(Math.abs(x - from), Math.abs(x - to))).toBeLessThan(1e-3);
      expect(y).toBeLessThan(own - gap + 1e-9);
    }
    for (const end of ends)
      if (end.x0 === end.x1)
        expect([end.y0, end.y1]).toContainEqual(expect.closeTo((end === ends[0] ? tips[0] : tips[1])[2] - gap, 9));
  }
});

it('a kept knife is set to the reach at which a fine search finds the least deviation', () => {
  const random = new Random(9);
  for (let n = 0; n < 8; n++) {
    const [wanted, kept] = [drawProfile(random), drawProfile(random)];
    const [mine, other] = [depthsOf(wanted.chain), depthsOf(kept.chain)];
    // Depths along the panel: the run-out level to the edge, nothing past the end.
    const depth = ({ heightOf, chain }: typeof wanted, a: number) =>
      a < chain[0]!.x0 ? chain[0]!.y0 : Math.max(0, heightOf(a) ?? 0);
    // What reaches the limit is not followed to its end.
    const off = (shift: number, limit = Infinity) => {
      let most = 0;
      for (let a = 0.01; a < 45 && most < limit; a += 0.05)
        most = Math.max(most, Math.abs(depth(wanted, a) - depth(kept, a - shift)));
      return most;
    };
    let least = Infinity;
    for (let shift = -19; shift <= 20; shift += 0.02) {
      // Is it already worse? Then its end needs no look.
      const quick = Math.abs(depth(wanted, 7) - depth(kept, 7 - shift));
      if (quick < least) least = Math.min(least, off(shift, least));
    }
    const found = leastDeviation(mine, other);
    expect(Math.abs(found.deviation - least)).toBeLessThan(0.03);
    expect(Math.abs(off(found.reach - 20) - found.deviation)).toBeLessThan(0.03);
  }
});

it('a sweep that rises above the face is as deep as it was drawn up to there, and has no depth beyond', () => {
  const random = new Random(10);
  for (let n = 0; n < 12; n++) {
    // Every other one starts short of the edge, as what a wider knife leaves does.
    const start = n % 2 === 0 ? 0 : -10;
    const { chain, heightOf } = drawChain(random, [
      [start, 8 + random.between(-1, 1)],
      [start + 6, 5 + random.between(-1, 1)],
      [start + 12, 2],
      [start + 18, random.between(-3, -1)],
    ]);
    const { pieces, end, reach, corners, spans } = depthsOf(chain);
    expect(reach).toBe(start + 18);
    expect(spans).toHaveLength(corners.length - 1);
    for (const [i, to] of corners.slice(1).entries()) expect(to).toBeGreaterThan(corners[i]!);
    let last = reach;
    while (heightOf(last)! <= 0) last -= 0.001;
    expect(Math.abs(end - last)).toBeLessThan(0.0011);
    for (const p of pieces)
      for (const u of [0.1, 0.5, 0.9]) {
        const a = p.x0 + u * (p.x1 - p.x0);
        expect(heightAt(p, a)).toBeCloseTo(heightOf(a)!, 9);
      }
  }
});

it('the least clearances along an edge are those of the tightest of 500 places on each curve', () => {
  const random = new Random(12);
  for (const { cuttingDiameter, rake, shear } of heads)
    for (const tilt of [0, Math.PI / 2, 0, Math.PI / 2, 0, Math.PI / 2]) {
      const head: Head = { ...raiser, cuttingDiameter, rake, shear };
      const face = knifeFace(head);
      const seen = seeProfile(drawProfile(random).chain, tilt);
      const r = cuttingDiameter / 2;
      const way = tilt === 0 ? -1 : 1;
      // By the formulas K2, K4, K5 and K6 of the documentation, place by place.
      const places = along(seen.chain, 500).map(({ x, y, dx, dy }) => {
        const offset = r * Math.sin(rake) + x * Math.tan(shear);
        const back = Math.PI / 2 - Math.asin(offset / (r + y)) - head.wedge;
        const side = Math.atan((Math.tan(back) * way * dx) / Math.hypot(dx, dy));
        const thick = head.knifeThickness / Math.sin(head.wedge);
        const heel = r + y - Math.sqrt((r + y) ** 2 - 2 * thick * (r + y) * Math.sin(back) + thick ** 2);
        return { back, side, heel };
      });
      const found = clearEdge(seen, face, head);
      for (const key of ['back', 'side', 'heel'] as const) {
        const least = Math.min(...places.map((p) => p[key]));
        expect(found[key].least).toBeLessThan(least + 1e-7);
        expect(found[key].least).toBeGreaterThan(least - 2e-5);
      }
    }
});

describe('the steel at a setting', () => {
  // A level land from a = 2 to 6 at 9 deep, a slope up to 16, 3 deep, an upright shoulder to 1 deep.
  const drawn = [line(2, 9, 6, 9), line(6, 9, 16, 3), line(16, 3, 16, 1)];
  const ends = (chain: Chain) => {
    const [first, last] = [chain[0]!, chain.at(-1)!];
    return [first.x0, first.y0, last.x1, last.y1];
  };

  it.each([
    ['as drawn', { right: 0, down: 0, deeper: 0 }, 2, 1],
    ['further in and deeper', { right: 3, down: 2, deeper: 0 }, 5, 3],
    ['on thicker stock', { right: 1, down: 0.5, deeper: 0.7 }, 3, 2.2],
    ['out past the edge and the face', { right: -4, down: -3, deeper: 0.4 }, 0, 0],
  ] as const)(
    '%s runs from the edge to the face, past both by the overrun, and ends in a lip where it was measured',
    (_, setting, edge, face) => {
      const { right, down, deeper } = setting;
      const { wood, steel } = setSteel(drawn, setting, 1.5);
      const rises = 1 + down;
      expect(ends(wood)).toEqual([expect.closeTo(0, 9), 9 + down, 16 + right, expect.closeTo(-deeper, 12)]);
      // Steel that is drawn beyond the overrun keeps its length.
      expect(ends(steel)).toEqual(
        [Math.min(-1.5, 2 + right), 9 + down, 16 + right, Math.min(rises, -deeper - 1.5)].map((x) =>
          expect.closeTo(x, 12),
        ),
      );
      // The level land is one line with its run-out, and so is the shoulder: three lines in all.
      expect([wood.length, steel.length]).toEqual([3, 3]);
      expect(findLip(drawn, setting)).toEqual({ edge: expect.closeTo(edge, 12), face: expect.closeTo(face, 12) });
      const measured = setSteel(drawn, setting, null);
      expect(ends(measured.steel)).toEqual([2 + right, 9 + down, 16 + right, rises]);
      expect(ends(measured.wood)).toEqual([
        expect.closeTo(Math.max(0, 2 + right), 9),
        9 + down,
        16 + right,
        expect.closeTo(Math.max(-deeper, rises), 9),
      ]);
    },
  );

  it('is cut at the edge where its slope crosses that, if all of its land lies past it', () => {
    // Moved out by 7 the land ends 1 past the edge, and the slope has come up a tenth of 6 there.
    const { wood } = setSteel(drawn, { right: -7, down: 0, deeper: 0 }, null);
    expect(ends(wood)).toEqual([expect.closeTo(0, 9), expect.closeTo(8.4, 9), 9, 1]);
    expect(wood).toHaveLength(2);
    // On stock so thin that its face lies half way up the slope: from 4 deep below it, at 11 in.
    const { wood: low } = setSteel(drawn, { right: 0, down: -6, deeper: 0 }, null);
    expect(ends(low)).toEqual([2, 3, expect.closeTo(11, 9), expect.closeTo(0, 9)]);
  });

  it('that begins at the edge and ends on the face is left as it is, over the top of an arc as well', () => {
    // From 4 deep up over the top of a circle of radius 5 and down to 4 deep, then upright to the face.
    const over = [arc(0, 4, 6, 4, 3, 8, -1), line(6, 4, 6, 0)];
    for (const overrun of [null, 0]) {
      const { wood, steel } = setSteel(over, AS_DRAWN, overrun);
      expect(wood).toEqual(over);
      expect(steel).toEqual(over);
    }
  });
});

it('steel may be as long as its face is from the tip to its foot, less a thousandth of the radius', () => {
  const steel = { shape: 'outline', reach: 14, depth: 9, chain: [line(0, 9, 6, 9), line(6, 9, 14, 0)] } as const;
  for (const [cuttingDiameter, rake] of [
    [120, 0],
    [60, 0.3],
    [160, 0.5],
  ] as const) {
    // The foot lies R·cos γ from the tip; flat the outline reaches 14 along the radius, on edge 9.
    const head = { ...raiser, cuttingDiameter, rake };
    const most = expect.closeTo((cuttingDiameter / 2) * (Math.cos(rake) - 0.001), 9);
    expect(steelReach(steel, head, 0)).toEqual({ length: 14, most });
    expect(steelReach(steel, head, Math.PI / 2)).toEqual({ length: 9, most });
  }
});
