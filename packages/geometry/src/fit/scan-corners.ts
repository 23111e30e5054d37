import { type Heading, turnBetween } from '../curve/heading.ts';
import type { Point } from '../curve/point.ts';
import { headingAt, MOST_NEIGHBOURS, type Scan } from './scan-headings.ts';

/** Where the headings on both sides differ by more than this (radians) there is a corner. */
const CORNER = (15 * Math.PI) / 180;
/** Two corners are at least this many points apart; of two that are nearer the sharper counts. */
const APART = 4;
/** A corner lies no further from the sharpest point than this many times the distance between neighbours. */
const STEPS = 3;

/**
 * The smooth stretches of a scan between its corners; each ends where the next starts.
 *
 * At a corner the heading found from the points before differs by more than 15° from the heading found from those after; the sharpest
 * such point counts. A scan rarely has a point on the corner itself: where the sharpest point does not lie on both headings, the
 * corner is where these cross. `scatter` is how far the points may lie off the outline, mm.
 */
export function splitAtCorners(scan: Scan, scatter: number): Point[][] {
  const stretches: Point[][] = [];
  let open: Point[] = [];
  let next = 0;
  for (const corner of findCorners(scan, scatter)) {
    const { vertex, before, after } = placeCorner(scan, corner, scatter);
    stretches.push([...open, ...scan.points.slice(next, before + 1), vertex]);
    open = [vertex];
    next = after;
  }
  stretches.push([...open, ...scan.points.slice(next)]);
  return stretches;
}

/** The numbers of the points that are nearest to corners. */
function findCorners(scan: Scan, scatter: number): number[] {
  const end = scan.points.length - 1;
  const corners: number[] = [];
  let sharpest = -1;
  let sharpness = 0;
  for (let i = 2; i <= end - 2; i++) {
    const bend = bendAt(scan, i, scatter) - headingError(scan, i, scatter);
    if (bend > CORNER && bend > sharpness) {
      sharpest = i;
      sharpness = bend;
    }
    if (sharpest < 0 || (i - sharpest < APART && i < end - 2)) continue;
    corners.push(sharpest);
    sharpest = -1;
    sharpness = 0;
  }
  return corners;
}

/** How far a heading at point i may be off because the points scatter, radians: much near the ends of a scan, where few points give it. */
function headingError({ along }: Scan, i: number, scatter: number): number {
  const before = along[i]! - along[Math.max(0, i - MOST_NEIGHBOURS)]!;
  const after = along[Math.min(along.length - 1, i + MOST_NEIGHBOURS)]! - along[i]!;
  return (8 * scatter) / Math.min(before, after);
}

function bendAt(scan: Scan, i: number, scatter: number): number {
  const before = headingAt(scan, i, 0, i, scatter);
  const after = headingAt(scan, i, i, scan.points.length - 1, scatter);
  return Math.abs(turnBetween(before, after));
}

/** Where a corner is, with the numbers of the last point before it and the first after it. The sharpest point itself goes to the side whose heading it lies on. */
function placeCorner(scan: Scan, i: number, scatter: number): { vertex: Point; before: number; after: number } {
  const { points, along } = scan;
  const p = points[i]!;
  const into = headingAt(scan, i - 1, 0, i - 1, scatter);
  const out = headingAt(scan, i + 1, i + 1, points.length - 1, scatter);
  const [onInto, onOut] = [offLine(into, p), offLine(out, p)];
  const near = Math.max(2 * scatter, 1e-9);
  const vertex = crossing(into, out);
  const step = Math.max(along[i]! - along[i - 1]!, along[i + 1]! - along[i]!);
  const found = vertex !== undefined && Math.hypot(vertex.x - p.x, vertex.y - p.y) <= STEPS * step;
  if (!found || (onInto <= near && onOut <= near)) return { vertex: p, before: i - 1, after: i + 1 };
  if (Math.min(onInto, onOut) > near) return { vertex, before: i - 1, after: i + 1 };
  return onInto <= onOut ? { vertex, before: i, after: i + 1 } : { vertex, before: i - 1, after: i };
}

function offLine(h: Heading, p: Point): number {
  return Math.abs((p.x - h.x) * h.dy - (p.y - h.y) * h.dx) / Math.hypot(h.dx, h.dy);
}

function crossing(a: Heading, b: Heading): Point | undefined {
  const across = a.dx * b.dy - a.dy * b.dx;
  if (across === 0) return undefined;
  const along = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / across;
  return { x: a.x + along * a.dx, y: a.y + along * a.dy };
}
