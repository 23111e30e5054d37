import { answerKnives, type Head, type Job, type KnifeReport, type NamedProfile, prepareJob } from '@fielded/core';
import { readReportPath } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { randomHead, rules } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';

type Vector = readonly [number, number, number];

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * A head as it lies on the bench, its knife's slot in it in three dimensions: the slot is made once, for a head that runs under
 * the stock turning counterclockwise. `mount` then says what the machine does with it: turned over it runs the other way round.
 * Gives where a point (s, t) of the steel passes: its height above the table on the spindle and its radius.
 *
 * `deepUp` says which end of the slot cuts deepest: the upper as mounted for a cutter under the stock, the lower over it.
 */
function passOf(
  head: Head,
  turnedOver: boolean,
  deepUp: boolean,
  s: number,
  t: number,
): { height: number; out: number } {
  // The slot on the bench: z up, turning counterclockwise seen from above. Its line leans by the shear.
  const u: Vector = [Math.cos(head.rake), Math.sin(head.rake), 0];
  const z: Vector = [0, 0, 1];
  const back = cross(u, z);
  // Up the slot the edge trails by the shear.
  const slot: Vector = [0, 1, 2].map((k) => Math.cos(head.shear) * z[k]! + Math.sin(head.shear) * back[k]!) as never;
  const benchUp = deepUp !== turnedOver;
  const along = benchUp ? s : -s;
  const p = [0, 1, 2].map((k) => (k === 0 ? head.cuttingDiameter / 2 : 0) + along * slot[k]! - t * u[k]!);
  return { height: turnedOver ? -p[2]! : p[2]!, out: Math.hypot(p[0]!, p[1]!) };
}

interface Case {
  readonly head: Head;
  readonly profile: NamedProfile;
  readonly depth: number;
  readonly reach: number;
  readonly run: 'under' | 'over';
  readonly rotation: 'clockwise' | 'counterclockwise';
  readonly tilt: number;
  readonly measured: number;
}

function randomCase(random: Random): Case {
  const profile = randomProfile(random, 16);
  const tilt = random.oneOf([0, 0, 0, Math.PI / 2, random.between(0.05, 1.4)]);
  return {
    head: randomHead(random),
    profile,
    depth: profile.depth + random.between(-Math.min(2, profile.depth / 2), 2),
    reach: profile.reach + random.between(-Math.min(3, profile.reach / 2), 3),
    run: tilt === 0 ? random.oneOf(['under', 'over'] as const) : 'under',
    rotation: random.oneOf(['clockwise', 'counterclockwise'] as const),
    tilt,
    measured: 24 + random.between(-1, 1),
  };
}

function knifeOf(c: Case): KnifeReport | undefined {
  const knife = { profile: c.profile, head: 'raiser', measured: 'wood' as const, groundFor: c };
  const cut = { name: 'raise', side: 'front' as const, ...c, head: 'raiser', knife: 'one' };
  const job: Job = {
    title: 'One cut',
    units: 'mm',
    panel: { thickness: 24, measured: c.measured, sawn: 'flat' },
    frame: { thickness: 24, groove: { width: 6, depth: 11, setback: 7 }, swellGap: 2 },
    cuts: [cut],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    shop: { units: 'mm', knives: { one: knife }, heads: { raiser: c.head }, machines: {}, rules },
  };
  return answerKnives(prepareJob(job))?.reports[0];
}

/** Distance of a point from a chain of lines. */
function distanceTo(points: readonly (readonly [number, number])[], x: number, y: number): number {
  let leastSquare = Number.POSITIVE_INFINITY;
  for (let i = 1; i < points.length; i++) {
    const [[ax, ay], [bx, by]] = [points[i - 1]!, points[i]!];
    const [vx, vy] = [bx - ax, by - ay];
    const square = vx * vx + vy * vy;
    const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * vx + (y - ay) * vy) / square));
    const [offX, offY] = [x - ax - along * vx, y - ay - along * vy];
    leastSquare = Math.min(leastSquare, offX * offX + offY * offY);
  }
  return Math.sqrt(leastSquare);
}

/** The profile's own members as set, from sizes alone, between edge and face: nothing of the engine. */
function wantedPlaces({ profile: p, depth, reach, run, measured }: Case): [number, number][] {
  const rise = p.depth - p.shoulder;
  const width = p.reach - p.land;
  const r = (width * width + rise * rise) / (2 * rise);
  const list: [number, number][] = [];
  const line = (a0: number, b0: number, a1: number, b1: number) => {
    for (let i = 0; i <= 20; i++) list.push([a0 + ((a1 - a0) * i) / 20, b0 + ((b1 - b0) * i) / 20]);
  };
  const hollow = (radius: number, to: number) => {
    for (let i = 0; i <= 60; i++) {
      const x = (to * i) / 60;
      list.push([p.land + x, p.depth - radius + Math.sqrt(radius * radius - x * x)]);
    }
  };
  const round = (radius: number, back: number) => {
    for (let i = 0; i <= 60; i++) {
      const x = back * (1 - i / 60);
      list.push([p.reach - x, p.shoulder + radius - Math.sqrt(radius * radius - x * x)]);
    }
  };
  if (p.shape === 'rebate') {
    line(0, p.depth, p.reach, p.depth);
    line(p.reach, p.depth, p.reach, 0);
  } else {
    line(0, p.depth, p.land, p.depth);
    if (p.shape === 'bevel') line(p.land, p.depth, p.reach, p.shoulder);
    if (p.shape === 'cove') hollow(r, width);
    if (p.shape === 'ovolo') round(r, width);
    if (p.shape === 'ogee') {
      hollow(p.balance * r, p.balance * width);
      round((1 - p.balance) * r, (1 - p.balance) * width);
    }
    line(p.reach, p.shoulder, p.reach, 0);
  }
  const deeper = run === 'over' ? measured - 24 : 0;
  const set = list.map(([a, b]): [number, number] => [a + reach - p.reach, b + depth - p.depth + deeper]);
  // Straight on to edge and face of the stock as measured.
  const [first, last] = [set[0]!, set[set.length - 1]!];
  for (let i = 0; i < 10; i++) if (first[0] > 0) set.unshift([(first[0] * (9 - i)) / 10, first[1]]);
  for (let i = 1; i <= 10; i++) if (last[1] > 0) set.push([last[0], last[1] * (1 - i / 10)]);
  return set.filter(([a, b]) => a >= 0 && b >= 0);
}

/** The farthest that any wanted place of the wood is from what the knife of the report passes, mm; undefined without a knife. */
function worstMiss(c: Case): number | undefined {
  const knife = knifeOf(c);
  if (!knife) return undefined;
  const under = c.run === 'under';
  const mounted = c.rotation === 'clockwise';
  const deeper = c.run === 'over' ? c.measured - 24 : 0;
  const radius = c.head.cuttingDiameter / 2;
  const tipReach = tipReachOf(c, knife);
  const passed = readReportPath(knife.outline)
    .flat()
    .flatMap((curve) => {
      const angle = arcAngle(curve);
      return Array.from({ length: 41 }, (_, i) => pointAlong(curve, i / 40, angle));
    })
    .map(({ x, y }): [number, number] => {
      const { height, out } = passOf(c.head, mounted, under, x, y);
      // Stations grow with depth: upwards under the stock, downwards over it.
      const station = knife.tipAt + (under ? height : -height);
      const reach = tipReach + out - radius;
      const [cos, sin] = c.tilt === 0 ? [1, 0] : c.tilt === Math.PI / 2 ? [0, 1] : [Math.cos(c.tilt), Math.sin(c.tilt)];
      const [a, b] =
        c.tilt === Math.PI / 2 ? [station, reach] : [reach * cos - station * sin, reach * sin + station * cos];
      return [a, b + deeper];
    });
  let worst = 0;
  const wanted = wantedPlaces(c);
  for (let i = 0; i < wanted.length; i += 7) worst = Math.max(worst, distanceTo(passed, ...wanted[i]!));
  // The end at the face and the end at the edge always.
  for (const at of [wanted[0]!, wanted[wanted.length - 1]!]) worst = Math.max(worst, distanceTo(passed, ...at));
  return worst;
}

/** Greatest reach along the radius of the profile as set in stock as planned, from its places. */
function tipReachOf(c: Case, knife: KnifeReport): number {
  const [cos, sin] = c.tilt === 0 ? [1, 0] : c.tilt === Math.PI / 2 ? [0, 1] : [Math.cos(c.tilt), Math.sin(c.tilt)];
  if (c.tilt === 0) return c.reach;
  if (c.tilt === Math.PI / 2) return c.depth;
  expect(cos + sin).toBeGreaterThan(0);
  return knife.cuttingRadius - knife.leastRadius;
}

/** More for a long run: CASES=10000. */
const CASES = Number(process.env.CASES ?? 60);

describe('a knife ordered for a setting, in its head on the machine', () => {
  it('passes every place of the wood wanted there, whichever way it runs: random cuts', () => {
    const random = new Random(71);
    const { made } = run(random, CASES);
    expect(made).toBe(CASES);
  });

  it('would tell a shear that is not turned with the hand', () => {
    const random = new Random(5);
    const cuts = Array.from({ length: 60 }, () => randomCase(random)).filter(
      (c) => Math.abs(c.head.shear) > 0.1 && c.tilt === 0 && c.head.rake > 0.1,
    );
    const turned = cuts.filter((c) => (c.run === 'under') !== (c.rotation === 'counterclockwise'));
    const misses = turned.map((c) => {
      const wrong = { ...c, head: { ...c.head, shear: -c.head.shear } };
      const knife = knifeOf(wrong);
      return knife ? knife.outline !== knifeOf(c)?.outline : true;
    });
    expect(misses.length).toBeGreaterThan(3);
    expect(misses.every(Boolean)).toBe(true);
  });
});

function run(random: Random, count: number): { made: number } {
  let made = 0;
  for (let i = 0; made < count; i++) {
    const c = randomCase(random);
    const miss = worstMiss(c);
    if (miss === undefined) continue;
    made++;
    // The outline is fitted to 0.005 mm.
    expect(miss, `case ${i}: ${JSON.stringify(c)}`).toBeLessThan(0.006);
  }
  return { made };
}
