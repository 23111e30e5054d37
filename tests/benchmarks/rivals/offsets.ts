import { arcAngle, type Chain, curveLength, type Loop, line, offsetLoops, pointAt } from '@fielded/geometry';
import Flatten from '@flatten-js/core';
import { EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { manyPieces } from '../../support/many-pieces.ts';
import { timeFor } from '../../support/timing.ts';
import { loadClipper } from './load-clipper.ts';

/** A parallel of a ring of many lines and arcs: how long it took, ms, and how far its area is off, mm². */
export interface OffsetRow {
  readonly engine: string;
  readonly median: number;
  readonly quartiles: readonly [number, number];
  readonly error: number;
}

export const OFFSET_PIECES = 5000;
const DISTANCE = 3;
/** What chords are laid within, mm, for those that know no arcs. */
const CHORD = 1e-3;
const PLACES = 6;

/**
 * Times the parallel of one ring, 3 mm outwards: Fielded keeps lines and arcs; the others get a polygon ready made. Each error of
 * area is against the mean of both clippers' with chords ten times finer; `distance` is how far ours lies from 3 mm at worst.
 */
export async function compareOffsets(seconds: number): Promise<{ rows: OffsetRow[]; distance: number }> {
  const ring = ringOf(OFFSET_PIECES);
  const clipper = await loadClipper();
  const coarse = pointsOf(ring.curves, CHORD);
  const fine = pointsOf(ring.curves, CHORD / 10);
  const wasm = (points: Points, chord: number) => clipper.inflate(points, DISTANCE, chord, PLACES);
  const plain = (points: Points, chord: number) =>
    inflatePathsD(
      [points.map(([x, y]) => ({ x, y }))],
      DISTANCE,
      JoinType.Round,
      EndType.Polygon,
      2,
      PLACES,
      chord,
    ).reduce((sum, path) => sum + areaOf(path.map(({ x, y }) => [x, y])), 0);
  const truth = (wasm(fine, CHORD / 10) + plain(fine, CHORD / 10)) / 2;
  const engines: [string, () => number][] = [
    ['Fielded', () => areaOfLoops(offsetLoops([ring], -DISTANCE))],
    [`clipper2-ts, ${CHORD} mm`, () => plain(coarse, CHORD)],
    [`clipper2-wasm, ${CHORD} mm`, () => wasm(coarse, CHORD)],
  ];
  const rows = engines.map(([engine, call]) => {
    const row = { engine, ...timeFor(call, seconds), error: Math.abs(call() - truth) };
    process.stderr.write(`offset, ${engine}: ${row.median.toPrecision(3)} ms\n`);
    return row;
  });
  return { rows, distance: worstDistance(ring, offsetLoops([ring], -DISTANCE)) };
}

type Points = (readonly [number, number])[];

/** A stepped profile of that many pieces as a ring: its ends carried out to a rectangle below it, run anticlockwise. */
function ringOf(pieces: number): Loop {
  const { profile } = manyPieces(Math.ceil(pieces / 0.6), pieces).cuts[0]!;
  if (profile.shape !== 'outline') throw new RangeError(profile.shape);
  // Without the upright at its end: stepped along the top of a bar, 500 mm long, so that the steps stay apart.
  const steps = profile.chain.slice(0, -1).map((c) => scaled(c, 500 / 38));
  const first = steps[0]!;
  const last = steps.at(-1)!;
  const below = -40;
  const back = [...steps].reverse().map((c) => ({
    ...c,
    x0: c.x1,
    y0: c.y1,
    x1: c.x0,
    y1: c.y0,
    turn: -c.turn as typeof c.turn,
  }));
  const closing = [
    line(first.x0, first.y0, first.x0, below),
    line(first.x0, below, last.x1, below),
    line(last.x1, below, last.x1, last.y1),
  ];
  return { curves: [...closing, ...back], closed: true };
}

function scaled(c: Chain[number], by: number): Chain[number] {
  return {
    x0: c.x0 * by,
    y0: c.y0 * by,
    x1: c.x1 * by,
    y1: c.y1 * by,
    cx: c.cx * by,
    cy: c.cy * by,
    r: c.r * by,
    turn: c.turn,
  };
}

function pointsOf(curves: Chain, chord: number): Points {
  return curves.flatMap((c) => {
    const most = c.turn === 0 ? Number.POSITIVE_INFINITY : 2 * Math.acos(1 - Math.min(1, chord / c.r));
    const steps = Math.max(1, Math.ceil(arcAngle(c) / most));
    return Array.from({ length: steps }, (_, k) => {
      const { x, y } = pointAt(c, k / steps);
      return [x, y] as const;
    });
  });
}

function areaOf(points: Points): number {
  return points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

/** Green's theorem over lines and arcs. */
function areaOfLoops(loops: readonly Loop[]): number {
  let area = 0;
  for (const { curves } of loops)
    for (const c of curves) {
      area += (c.x0 * c.y1 - c.x1 * c.y0) / 2;
      if (c.turn === 0) continue;
      const angle = curveLength(c) / c.r;
      area += (c.turn * c.r * c.r * (angle - Math.sin(angle))) / 2;
    }
  return area;
}

/** The farthest, mm, that 500 places of the parallel lie from its distance, as @flatten-js/core measures it: it has no parallels itself. */
function worstDistance(ring: Loop, loops: readonly Loop[]): number {
  const shapes = ring.curves.map((c) => {
    const point = (x: number, y: number) => new Flatten.Point(x, y);
    if (c.turn === 0) return new Flatten.Segment(point(c.x0, c.y0), point(c.x1, c.y1));
    const angle = (x: number, y: number) => Math.atan2(y - c.cy, x - c.cx);
    return new Flatten.Arc(point(c.cx, c.cy), c.r, angle(c.x0, c.y0), angle(c.x1, c.y1), c.turn > 0);
  });
  const curves = loops.flatMap((loop) => loop.curves);
  let worst = 0;
  for (let k = 0; k < curves.length; k += Math.max(1, Math.floor(curves.length / 250))) {
    for (const at of [0.2, 0.7]) {
      const { x, y } = pointAt(curves[k]!, at);
      const spot = new Flatten.Point(x, y);
      const away = Math.min(...shapes.map((shape) => spot.distanceTo(shape)[0]));
      worst = Math.max(worst, Math.abs(away - DISTANCE));
    }
  }
  return worst;
}
