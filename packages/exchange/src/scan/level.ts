import type { Refusal } from '@fielded/core';
import type { Point } from '@fielded/geometry';

/** A sample turned until its two faces are level: mm, y up from the lower face, in order clockwise as drawn. */
export interface LevelSample {
  readonly points: readonly Point[];
  readonly thickness: number;
  /** Degrees it was turned by: positive anticlockwise as seen. */
  readonly turned: number;
  /** Where the picture's point (x, y), mm from its top left with y down, lies in it. */
  readonly place: (x: number, y: number) => Point;
  /** The way back. */
  readonly back: (p: Point) => Point;
}

/** Chords, mm, that directions are taken from. */
const CHORD = 1.5;
/** Bins to a degree of the histogram of directions. */
const FINENESS = 4;
/** Faces that run at least this far, mm, can be levelled by. */
const LEAST_FACE = 8;

/**
 * Turns a silhouette (mm, y down) until its two faces are level (formula T2): first by the commonest direction of its chords, then by straight lines
 * through the points along its two outermost levels, weighed by their length, three times over.
 */
export function levelSample(points: readonly Point[]): LevelSample | Refusal {
  const up = points.map(({ x, y }) => ({ x, y: -y }));
  let angle = commonestDirection(up);
  let turnedPoints: Point[] = [];
  let faces: { upper: Face; lower: Face } | null = null;
  for (const within of [0.5, 0.2, 0.1]) {
    turnedPoints = turnAll(up, -angle);
    faces = findFaces(turnedPoints, within);
    if (faces === null) break;
    const { upper, lower } = faces;
    angle += Math.atan((upper.slope * upper.length + lower.slope * lower.length) / (upper.length + lower.length));
  }
  if (faces === null)
    return {
      refused: 'the two faces of the sample were not found',
      instead: 'Leave at least 20 mm of the field on the sample, and scan its end grain flat on the glass',
    };
  turnedPoints = turnAll(up, -angle);
  const last = findFaces(turnedPoints, 0.1) ?? faces;
  const base = last.lower.height;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return {
    points: turnedPoints.map(({ x, y }) => ({ x, y: y - base })),
    thickness: last.upper.height - base,
    turned: (-halfTurn(angle) * 180) / Math.PI,
    place: (x, y) => ({ x: x * cos - y * sin, y: -x * sin - y * cos - base }),
    back: ({ x, y }) => ({ x: x * cos - (y + base) * sin, y: -(x * sin + (y + base) * cos) }),
  };
}

interface Face {
  readonly height: number;
  readonly slope: number;
  readonly length: number;
}

/** Between −90° and 90°: which way a face is run does not matter. */
function halfTurn(angle: number): number {
  return angle - Math.PI * Math.round(angle / Math.PI);
}

/** The direction, of 180°, that most of the outline runs in. */
function commonestDirection(points: readonly Point[]): number {
  const bins = new Float64Array(180 * FINENESS);
  const step = stepFor(points, CHORD);
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!;
    const q = points[(i + step) % points.length]!;
    const degrees = (Math.atan2(q.y - p.y, q.x - p.x) * 180) / Math.PI;
    bins[Math.floor((((degrees % 180) + 180) % 180) * FINENESS) % bins.length]!++;
  }
  let best = 0;
  let most = -1;
  const count = bins.length;
  for (let k = 0; k < count; k++) {
    // Three bins together, so that a direction on the border of two is not torn apart.
    const here = bins[(k + count - 1) % count]! + bins[k]! + bins[(k + 1) % count]!;
    if (here > most) {
      most = here;
      best = k;
    }
  }
  return halfTurn((((best + 0.5) / FINENESS) * Math.PI) / 180);
}

/** So many points on lie about `length` mm apart. */
function stepFor(points: readonly Point[], length: number): number {
  let along = 0;
  for (let i = 1; i < points.length; i++)
    along += Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y);
  return Math.max(1, Math.round((length * points.length) / along));
}

function turnAll(points: readonly Point[], angle: number): Point[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return points.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
}

/** Straight lines through the points that lie `within` mm of the outermost levels that run far enough. */
function findFaces(points: readonly Point[], within: number): { upper: Face; lower: Face } | null {
  const upper = outermost(points, within, 1);
  const lower = outermost(points, within, -1);
  return upper && lower && upper.height - lower.height > 2 ? { upper, lower } : null;
}

function outermost(points: readonly Point[], within: number, way: 1 | -1): Face | null {
  // Levels from outside in, in steps of what counts as one; the first that runs far enough is a face.
  const heights = points.map(({ y }) => way * y).sort((a, b) => b - a);
  const spacing = perimeterStep(points);
  const enough = Math.ceil(LEAST_FACE / spacing);
  for (let k = 0; k + enough < heights.length; k++) {
    if (heights[k]! - heights[k + enough]! > within) continue;
    const level = heights[k + Math.floor(enough / 2)]!;
    const near = points.filter(({ y }) => Math.abs(way * y - level) <= within);
    const line = fitLevel(near);
    const better = fitLevel(near.filter(({ x, y }) => Math.abs(y - line.at(x)) <= within / 3));
    return { height: better.at(better.middle), slope: better.slope, length: near.length * spacing };
  }
  return null;
}

function perimeterStep(points: readonly Point[]): number {
  let along = 0;
  for (let i = 1; i < points.length; i++)
    along += Math.hypot(points[i]!.x - points[i - 1]!.x, points[i]!.y - points[i - 1]!.y);
  return along / points.length;
}

function fitLevel(points: readonly Point[]): { slope: number; middle: number; at: (x: number) => number } {
  const n = points.length;
  const mx = points.reduce((sum, p) => sum + p.x, 0) / n;
  const my = points.reduce((sum, p) => sum + p.y, 0) / n;
  let xx = 0;
  let xy = 0;
  for (const { x, y } of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
  }
  const slope = xx > 0 ? xy / xx : 0;
  return { slope, middle: mx, at: (x) => my + slope * (x - mx) };
}
