// Checks the sweep of profiles that double back against a general-purpose polygon clipping library (clipper2-ts): every
// stretch of the line is drawn out towards the machine's side as far as it will go, since a knife that reaches a point
// clears all that lies nearer its axis at that station; the union of those is what the sweep takes.
import { evaluateJoint, type Job } from '@fielded/core';
import type { Curve } from '@fielded/geometry';
import { areaD, areaPathsD, differenceD, FillRule, intersectD } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { Random } from '../support/random.ts';

const T = 22;
const FAR = 300;
const PLACES = 7;
type Points = [number, number][];

/** A line from edge to face that doubles back in depth, reach or both, without crossing itself. */
function doublingLine(random: Random): Points {
  const points: Points = [[0, random.between(6, 12)]];
  let a = 0;
  let b = points[0]![1];
  for (let i = 0; i < 5; i++) {
    a += random.between(2, 7);
    // A tooth: down or up steeply, leaning back under itself at times.
    const lean = random.unit() < 0.4 ? random.between(-1.8, 0) : random.between(0, 1);
    const next = random.between(2, 14);
    points.push([a, b], [a + lean, next]);
    a = Math.max(a, a + lean);
    b = next;
  }
  points.push([a + 3, b], [a + 3, 0]);
  return points;
}

function outlineJob(points: Points, tilt: number): Job {
  const chain = points.slice(1).map(([x1, y1], i): Curve => {
    const [x0, y0] = points[i]!;
    return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 };
  });
  const reach = Math.max(...points.map(([a]) => a));
  const depth = Math.max(...points.map(([, b]) => b));
  const profile = { shape: 'outline', reach, depth, chain } as const;
  return {
    title: 'doubling line',
    units: 'mm',
    panel: { thickness: T, measured: T, sawn: 'flat' },
    frame: { thickness: 24, groove: { width: 6, depth: 10, setback: 6 }, swellGap: 2 },
    cuts: [{ name: 'line', side: 'front', profile, depth, reach, run: 'under', tilt }],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
  };
}

function sweptArea(points: Points, tilt: number, width: number): number {
  const [ua, ub] = [Math.cos(tilt), Math.sin(tilt)];
  const line: Points = [[points[0]![0] - FAR, points[0]![1]], ...points, [points.at(-1)![0], -FAR]];
  const drawnOut = line.slice(1).map((q, i) => {
    const p = line[i]!;
    const quad = [
      p,
      q,
      [q[0] - 2 * FAR * ua, q[1] - 2 * FAR * ub],
      [p[0] - 2 * FAR * ua, p[1] - 2 * FAR * ub],
    ] as const;
    const path = quad.map(([x, y]) => ({ x, y }));
    // All the same way round, or two that overlap would cancel each other.
    return areaD(path) < 0 ? path.reverse() : path;
  });
  return T * width - areaPathsD(differenceD([box(width)], drawnOut, FillRule.NonZero, PLACES));
}

function drawnArea(points: Points, width: number): number {
  const last = points.at(-1)!;
  const region: Points = [[-FAR, points[0]![1]], ...points, [last[0], -FAR], [-FAR, -FAR]];
  return areaPathsD(intersectD([box(width)], [region.map(([x, y]) => ({ x, y }))], FillRule.EvenOdd, PLACES));
}

function box(width: number) {
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: T },
    { x: 0, y: T },
  ];
}

describe('a knife takes everything nearer its axis', () => {
  it.each([0, 0.3, Math.PI / 4, 1.2, Math.PI / 2])('at a tilt of %f radians, for 60 lines that double back', (tilt) => {
    const random = new Random(Math.round(tilt * 1000) + 7);
    let doubled = 0;
    for (let i = 0; i < 60; i++) {
      const points = doublingLine(random);
      const { section } = evaluateJoint(outlineJob(points, tilt));
      const [cut] = section.cuts;
      const swept = sweptArea(points, tilt, section.width);
      expect(Math.abs(cut!.removedArea - swept), `line ${i} swept`).toBeLessThan(2e-5);
      const lost = swept - drawnArea(points, section.width);
      expect(Math.abs(cut!.takenFromDrawing - lost), `line ${i} lost`).toBeLessThan(2e-5);
      if (cut!.takenFromDrawing > 0) doubled++;
    }
    expect(doubled).toBeGreaterThan(20);
  });
});
