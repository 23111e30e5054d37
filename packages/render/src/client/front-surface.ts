import { arcAngles, type Curve, type Loop, pointAt } from '@fielded/geometry';

/** A point of a surface in section: `a` in from the edge, `d` behind a reference face, wood mm. */
export interface SurfacePoint {
  readonly a: number;
  readonly d: number;
}

/** Chords of an arc stay within this of it, wood mm: less than a line is wide in any picture for a client. */
const CHORD_ERROR = 0.02;
/** A chord turns by no more than this, radians, so that a bend at a chord's end is never taken for an arris. */
const CHORD_TURN = (4 * Math.PI) / 180;

/** A curve as points from its start to its end, the start left out. */
export function chordPoints(curve: Curve): { x: number; y: number }[] {
  if (curve.turn === 0) return [{ x: curve.x1, y: curve.y1 }];
  const angle = Math.min(CHORD_TURN, 2 * Math.acos(Math.max(0, 1 - CHORD_ERROR / curve.r)));
  const count = Math.min(400, Math.max(2, Math.ceil(Math.abs(arcAngles(curve).sweep) / angle)));
  return Array.from({ length: count }, (_, i) => pointAt(curve, (i + 1) / count));
}

/** A closed loop as the corners of a polygon. */
export function loopPoints(loop: Loop): { x: number; y: number }[] {
  return loop.curves.flatMap(chordPoints);
}

/**
 * The front surface of a section from `from` mm in, as points from there to its far end.
 *
 * The section is one closed loop, x in from the edge and y down from its front face. Of the two ways round from its far
 * top corner the one along the front is taken, up to where it passes `from`.
 */
export function frontSurface(section: Loop, from: number): SurfacePoint[] {
  const points = loopPoints(section);
  const width = Math.max(...points.map(({ x }) => x));
  const top = points.reduce((best, p, i) => (isFarTop(p, points[best]!, width) ? i : best), 0);
  const forward = walk(points, top, 1, from);
  const backward = walk(points, top, -1, from);
  // The front is the way that stays higher: the other one goes down the far end first.
  const front = meanDepth(forward) <= meanDepth(backward) ? forward : backward;
  return front.map(({ x, y }) => ({ a: x, d: y })).reverse();
}

interface XY {
  readonly x: number;
  readonly y: number;
}

function isFarTop(p: XY, best: XY, width: number): boolean {
  const off = (q: XY) => (width - q.x) * 1e3 + q.y;
  return off(p) < off(best);
}

/** Points from corner `start` one way round until `from` is passed, ending exactly there. */
function walk(points: readonly XY[], start: number, step: 1 | -1, from: number): XY[] {
  const found: XY[] = [points[start]!];
  for (let i = 1; i < points.length; i++) {
    const last = found[found.length - 1]!;
    const next = points[(start + step * i + points.length * points.length) % points.length]!;
    if (next.x > from) found.push(next);
    else {
      const share = last.x === next.x ? 0 : (last.x - from) / (last.x - next.x);
      found.push({ x: from, y: last.y + (next.y - last.y) * share });
      break;
    }
  }
  return found;
}

function meanDepth(points: readonly XY[]): number {
  return points.reduce((sum, { y }) => sum + y, 0) / points.length;
}
