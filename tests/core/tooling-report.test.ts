import { readFileSync } from 'node:fs';
import {
  answerKnives,
  evaluate,
  type Head,
  type Job,
  type KnifeReport,
  type NamedProfile,
  prepareJob,
  readJob,
  readShop,
} from '@fielded/core';
import { line, readReportPath } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { reportShopKnives } from '../../packages/core/src/report/knives.ts';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { DEGREE, raiser, randomHead, rules } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';

const ogee: NamedProfile = { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 };

/** A job of one front cut with a head. */
function jobWith(head: Head, profile: NamedProfile, tilt: number, units: 'mm' | 'in' = 'mm'): Job {
  return {
    title: 'One cut',
    units,
    panel: { thickness: 24, measured: 24, sawn: 'flat' },
    frame: { thickness: 24, groove: { width: 6, depth: 11, setback: 7 }, swellGap: 2 },
    cuts: [
      {
        name: 'raise',
        side: 'front',
        profile,
        depth: profile.depth,
        reach: profile.reach,
        run: 'under',
        tilt,
        head: 'raiser',
      },
    ],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    shop: { units, knives: {}, heads: { raiser: head }, machines: {}, rules },
  };
}

function knifeOf(head: Head, profile: NamedProfile, tilt: number, units: 'mm' | 'in' = 'mm'): KnifeReport | undefined {
  return answerKnives(prepareJob(jobWith(head, profile, tilt, units)))?.reports[0];
}

/**
 * How far out along the radius a profile reaches at a station of the spindle, from sizes alone: found by walking 20,000
 * points of each member in the profile's own formulas and, at the nearest two, a straight line. Nothing of the engine.
 */
function reachByWalking(p: NamedProfile, station: number, tilt: number): number {
  const [cos, sin] = tilt === 0 ? [1, 0] : tilt === Math.PI / 2 ? [0, 1] : [Math.cos(tilt), Math.sin(tilt)];
  const way = tilt === Math.PI / 2 ? 1 : -1;
  const run = p.reach - p.land;
  const rise = p.depth - p.shoulder;
  const s = (run * run + rise * rise) / (2 * rise);
  const members: ((u: number) => [number, number])[] = [];
  const straight = (a0: number, b0: number, a1: number, b1: number) =>
    members.push((u) => [a0 + u * (a1 - a0), b0 + u * (b1 - b0)]);
  const hollow = (r: number, to: number) =>
    members.push((u) => [p.land + u * to, p.depth - r + Math.sqrt(r * r - (u * to) ** 2)]);
  const round = (r: number, back: number) =>
    members.push((u) => [p.reach - u * back, p.shoulder + r - Math.sqrt(r * r - (u * back) ** 2)]);
  if (p.shape === 'rebate') {
    straight(0, p.depth, p.reach, p.depth);
    straight(p.reach, p.depth, p.reach, 0);
  } else {
    if (p.land > 0) straight(0, p.depth, p.land, p.depth);
    if (p.shape === 'bevel') straight(p.land, p.depth, p.reach, p.shoulder);
    if (p.shape === 'cove') hollow(s, run);
    if (p.shape === 'ovolo') round(s, run);
    if (p.shape === 'ogee') {
      hollow(p.balance * s, p.balance * run);
      round((1 - p.balance) * s, (1 - p.balance) * run);
    }
    if (p.shoulder > 0) straight(p.reach, p.shoulder, p.reach, 0);
  }
  let best = Number.NEGATIVE_INFINITY;
  const seen = ([a, b]: [number, number]) => ({ x: way * (a * sin - b * cos), y: a * cos + b * sin });
  for (const member of members) {
    const n = 400;
    for (let i = 0; i < n; i++) {
      let [lo, hi] = [i / n, (i + 1) / n];
      const [from, to] = [seen(member(lo)), seen(member(hi))];
      for (const end of [from, to]) if (Math.abs(end.x - station) < 1e-9) best = Math.max(best, end.y);
      if ((from.x - station) * (to.x - station) > 0 || from.x === to.x) continue;
      const rising = to.x > from.x;
      for (let k = 0; k < 60; k++) {
        const middle = (lo + hi) / 2;
        if (seen(member(middle)).x < station === rising) lo = middle;
        else hi = middle;
      }
      best = Math.max(best, seen(member(lo)).y);
    }
  }
  return best;
}

/** Where a point of the steel passes in the section, from the head's own figures. */
function placeInCut(
  station: number,
  s: number,
  t: number,
  radius: number,
  off: number,
  shear: number,
  tipReach: number,
  tilt: number,
): { a: number; b: number } {
  const seat = Math.sqrt(radius * radius - off * off);
  const reach = tipReach - radius + Math.hypot(seat - t, off + s * Math.sin(shear));
  if (tilt === Math.PI / 2) return { a: station, b: reach };
  const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)];
  return { a: reach * cos - station * sin, b: reach * sin + station * cos };
}

describe('ordinates', () => {
  it('agree with a computation of their own to 1e-7 mm, on random heads and profiles', () => {
    const random = new Random(314);
    let made = 0;
    let compared = 0;
    while (made < trials(40, 120)) {
      const head = randomHead(random);
      const profile = randomProfile(random, 14);
      const tilt = random.oneOf([0, 0, Math.PI / 2, random.between(0.1, 1.4)]);
      const knife = knifeOf(head, profile, tilt);
      if (!knife) continue;
      made++;
      const radius = head.cuttingDiameter / 2;
      const [cos, sin] = tilt === 0 ? [1, 0] : tilt === Math.PI / 2 ? [0, 1] : [Math.cos(tilt), Math.sin(tilt)];
      const tipReach =
        tilt === 0 ? profile.reach : tilt === Math.PI / 2 ? profile.depth : tipReachOf(profile, cos, sin);
      const off = radius * Math.sin(head.rake);
      for (const [i, { s, t }] of knife.ordinates.entries()) {
        const { a, b } = placeInCut(
          knife.tipAt + s * Math.cos(head.shear),
          s,
          t,
          radius,
          off,
          head.shear,
          tipReach,
          tilt,
        );
        // Walls square to the spindle have many places at one station, and the overrun lies outside the sizes.
        const neighbours = [knife.ordinates[i - 1], knife.ordinates[i + 1]];
        const onWall = neighbours.some((p) => p && Math.abs(p.s - s) < 0.02);
        if (a < 1e-6 || b < 1e-6 || onWall) continue;
        compared++;
        const out = reachByWalking(profile, knife.tipAt + s * Math.cos(head.shear), tilt);
        const r = radius - (tipReach - out);
        const q = off + s * Math.sin(head.shear);
        const expected = Math.sqrt(radius * radius - off * off) - Math.sqrt(r * r - q * q);
        // Next to the end of an arc that runs square to the tip line, 1e-16 of station is worth 1e-6 of height.
        expect(Math.abs(t - expected), `case ${made}, s ${s}`).toBeLessThan(1e-5);
      }
    }
    expect(compared).toBeGreaterThan(8 * made);
  });

  it('go along the edge from the overrun at the face, every 1 mm, up the wall and past the edge of the panel', () => {
    const { ordinates } = knifeOf(raiser, ogee, 0)!;
    expect(ordinates.slice(0, 4).map((p) => [p.s, p.t])).toEqual([
      [-2.5, 0],
      [-2, 0],
      [-1, 0],
      [0, 0],
    ]);
    const h = 80 * Math.sin(18 * DEGREE);
    const tAt = (r: number) => Math.sqrt(80 ** 2 - h * h) - Math.sqrt(r * r - h * h);
    const [foot, end] = ordinates.slice(-2);
    expect([foot!.s, end!.s]).toEqual([7.5, 7.5]);
    expect(foot!.t).toBeCloseTo(tAt(53), 9);
    expect(end!.t).toBeCloseTo(tAt(41), 9);
  });

  it('carry the radius, rake and clearance of the edge there', () => {
    const { ordinates } = knifeOf(raiser, ogee, 0)!;
    const last = ordinates.at(-2)!;
    expect(ordinates[0]!.radius).toBeCloseTo(80, 12);
    expect(ordinates[0]!.rake).toBeCloseTo(18, 9);
    expect(last.radius).toBeCloseTo(53, 9);
    expect(last.rake).toBeCloseTo(Math.asin((80 * Math.sin(18 * DEGREE)) / 53) / DEGREE, 9);
    expect(last.clearance).toBeCloseTo(45 - last.rake, 9);
  });

  it('stand 1/32 in apart in a job of inches', () => {
    const { ordinates } = knifeOf(raiser, ogee, 0, 'in')!;
    expect(ordinates[3]!.s - ordinates[2]!.s).toBeCloseTo(25.4 / 32, 12);
  });
});

/** Greatest reach of a profile seen at a tilt: the tip is at the shoulder's foot unless an arc stands out further. */
function tipReachOf(p: NamedProfile, cos: number, sin: number): number {
  let best = Number.NEGATIVE_INFINITY;
  const corners: [number, number][] = [
    [0, p.depth],
    [p.land, p.depth],
    [p.reach, p.shape === 'rebate' ? p.depth : p.shoulder],
    [p.reach, 0],
  ];
  for (const [a, b] of corners) best = Math.max(best, a * cos + b * sin);
  if (p.shape === 'ovolo' || p.shape === 'ogee') {
    const share = p.shape === 'ovolo' ? 1 : 1 - p.balance;
    const run = p.reach - p.land;
    const rise = p.depth - p.shoulder;
    const r = (share * (run * run + rise * rise)) / (2 * rise);
    for (let i = 0; i <= 200000; i++) {
      const back = (share * run * i) / 200000;
      best = Math.max(best, (p.reach - back) * cos + (p.shoulder + r - Math.sqrt(r * r - back * back)) * sin);
    }
  }
  if (p.shape === 'cove' || p.shape === 'ogee') {
    const share = p.shape === 'cove' ? 1 : p.balance;
    const run = p.reach - p.land;
    const rise = p.depth - p.shoulder;
    const r = (share * (run * run + rise * rise)) / (2 * rise);
    for (let i = 0; i <= 200000; i++) {
      const x = (share * run * i) / 200000;
      best = Math.max(best, (p.land + x) * cos + (p.depth - r + Math.sqrt(r * r - x * x)) * sin);
    }
  }
  return best;
}

describe('the knife of the ogee on a 160 mm head', () => {
  const knife = knifeOf({ ...raiser, rake: 20 * DEGREE }, ogee, 0)!;

  it('has its sizes', () => {
    expect(knife).toMatchObject({
      cut: 'raise',
      head: 'raiser',
      cuttingRadius: 80,
      leastRadius: 42,
      tipAt: 1.5,
      width: 10,
      overrun: { edge: 1, face: 1 },
    });
    expect(knife.rake).toBeCloseTo(20, 12);
    expect(knife.presented).toBe(0);
    // √(80² − h²) − √(42² − h²) with h = 80·sin 20°.
    expect(knife.length).toBeCloseTo(43.310974661, 8);
    expect(knife.wood).toMatchObject({ length: 38, width: 9 });
  });

  it('has an outline of as many pieces as it says, within its deviation of every ordinate, in (s, t)', () => {
    expect(knife.outline.match(/[LA]/g)).toHaveLength(knife.pieces);
    expect(knife.deviation).toBeGreaterThan(0);
    expect(knife.deviation).toBeLessThanOrEqual(0.005);
    const points = readReportPath(knife.outline)[0]!.flatMap((c) =>
      Array.from({ length: 2001 }, (_, i) => pointAlong(c, i / 2000, arcAngle(c))),
    );
    for (const { s, t } of knife.ordinates) {
      const nearest = Math.min(...points.map(({ x, y }) => Math.hypot(x - s, y - t)));
      // Points up to 0.007 mm apart.
      expect(nearest).toBeLessThan(knife.deviation + 0.004);
    }
  });

  it('has its least clearance at the edge, where the rake has grown', () => {
    // 90° − asin(80·sin 20° / 42) − 45°
    const rake = Math.asin((80 * Math.sin(20 * DEGREE)) / 42) / DEGREE;
    expect(knife.clearance.least).toBeCloseTo(45 - rake, 9);
    expect(knife.clearance.at.s).toBeCloseTo(7.5, 12);
    expect(knife.clearance.at.t).toBeCloseTo(knife.length, 9);
    expect(knife.clearance.side.least).toBe(0);
  });

  it('sets the limiter back by the gap on the radius, and clear of the flat sideways', () => {
    const { gap, outline } = knife.limiter!;
    expect(gap.least).toBeCloseTo(1.1, 12);
    expect(gap.most).toBeCloseTo(1.1, 12);
    const h = 80 * Math.sin(20 * DEGREE);
    const along = (r: number) => Math.sqrt(r * r - h * h) - Math.sqrt((r - 1.1) ** 2 - h * h);
    expect(gap.alongFace.least).toBeCloseTo(along(80), 9);
    // Next to the land the edge grows steeper than gap : side, and the limiter keeps clear sideways instead.
    expect(gap.alongFace.most).toBeGreaterThan(along(60));
    expect(gap.alongFace.most).toBeLessThan(along(53));
    expect(gap.side).toBe(0.2);
    expect(outline).toMatch(/^M 7\.3 /);
  });

  it('measures the heel against its own circle', () => {
    // Back of the knife: 8 / sin 45° long, leaving the edge at the clearance angle inside the tangent.
    const clearance = knife.clearance.least * DEGREE;
    const back = 8 / Math.sin(45 * DEGREE);
    const heel = Math.hypot(42 - back * Math.sin(clearance), back * Math.cos(clearance));
    expect(knife.heel.least).toBeCloseTo(42 - heel, 9);
  });
});

describe('the knife of a free outline', () => {
  it('runs straight on to the edge and out through the face', () => {
    const chain = [line(10, 9, 30, 3)];
    const profile = { shape: 'outline' as const, reach: 30, depth: 9, chain };
    const job = jobWith(raiser, ogee, 0);
    const cut = { ...job.cuts[0]!, profile, reach: 30, depth: 9 };
    const knife = evaluate({ ...job, cuts: [cut] }).knives![0]!;
    expect(knife).toMatchObject({ leastRadius: 50, tipAt: 3, width: 10 });
    expect(knife.wood.length).toBe(30);
    expect(knife.ordinates.slice(0, 5).map((p) => [p.s, p.t])).toEqual([-4, -3, -2, -1, 0].map((at) => [at, 0]));
    expect(knife.ordinates.at(-1)!.s).toBe(6);
    expect(knife.ordinates.at(-1)!.radius).toBeCloseTo(49, 9);
  });
});

describe('draft', () => {
  it('of the angle named gives the wall the shop’s least side clearance', () => {
    const rebate: NamedProfile = { shape: 'rebate', reach: 20, depth: 8, land: 0, shoulder: 0, balance: 0.5 };
    const [wall] = knifeOf(raiser, rebate, 0)!.walls;
    expect(wall).toMatchObject({
      from: { a: 0, b: 8 },
      to: { a: 20, b: 8 },
      sideClearance: 0,
      undercut: false,
      straight: true,
    });
    const lean = 20 * Math.tan(wall!.draft! * DEGREE);
    const leaning: NamedProfile = { ...rebate, shape: 'bevel', depth: 8 + lean, shoulder: 8 };
    const knife = knifeOf(raiser, leaning, 0)!;
    expect(knife.clearance.side.least).toBeCloseTo(3, 6);
    expect(knife.walls).toEqual([]);
  });

  it('names an upright shoulder run on edge, and none when it is run flat', () => {
    const bevel: NamedProfile = { shape: 'bevel', reach: 30, depth: 9, land: 0, shoulder: 2, balance: 0.5 };
    expect(knifeOf(raiser, bevel, Math.PI / 2)!.walls.map((w) => [w.from, w.to])).toEqual([
      [
        { a: 30, b: 2 },
        { a: 30, b: 0 },
      ],
    ]);
    expect(knifeOf(raiser, bevel, 0)!.walls).toEqual([]);
  });
});

describe('a job', () => {
  it('has no knives in its report when no cut names a head', () => {
    const job = jobWith(raiser, ogee, 0);
    const { head: _, ...cut } = job.cuts[0]!;
    expect(evaluate({ ...job, cuts: [cut] })).not.toHaveProperty('knives');
  });

  it('takes a deeper reach off the least radius, and gives the knife the length for it', () => {
    const job = jobWith(raiser, ogee, 0);
    const knife = evaluate({ ...job, cuts: [{ ...job.cuts[0]!, reach: 40 }] }).knives![0]!;
    expect(knife.leastRadius).toBe(40);
    expect(knife.wood.length).toBe(40);
    const h = 80 * Math.sin(18 * DEGREE);
    expect(knife.length).toBeCloseTo(Math.sqrt(80 ** 2 - h * h) - Math.sqrt(40 ** 2 - h * h), 9);
  });

  it('read from the example carries the knives of both cuts', () => {
    const shop = readFileSync('examples/shop/shop.yaml', 'utf8');
    const { job, faults } = readJob(readFileSync('examples/shop/job.yaml', 'utf8'), { loadShop: () => shop });
    expect(faults).toEqual([]);
    const report = evaluate(job!);
    expect(report.fit.verdict).toBe('sliding');
    expect(report.knives!.map((k) => [k.cut, k.knife, k.head])).toEqual([
      ['raise', 'ogee-38', 'raiser'],
      ['back relief', 'cove-14', 'small'],
    ]);
    expect(report.problems.filter((p) => p.severity === 'error')).toEqual([]);
  });
});

describe('the example shop', () => {
  const { shop } = readShop(readFileSync('examples/shop/shop.yaml', 'utf8'));
  const { reports, problems } = reportShopKnives(shop!);

  it('has eight knives in three heads, none with an error', () => {
    expect(reports).toHaveLength(8);
    expect(new Set(reports.map((k) => k.head)).size).toBe(3);
    expect(problems.filter((p) => p.severity === 'error')).toEqual([]);
  });

  it('takes the knife measured off the steel as it is, and the wood as what it cuts', () => {
    const old = reports.find((k) => k.cut === 'old-hollow')!;
    expect(old).toMatchObject({ length: 22, width: 8, deviation: 0, pieces: 3 });
    const radius = Math.hypot(62.5 * Math.cos(18 * DEGREE) - 22, 62.5 * Math.sin(18 * DEGREE));
    expect(old.wood.length).toBeCloseTo(62.5 - radius, 9);
    expect(old.ordinates.at(-1)!.s).toBe(7.5);
  });
});
