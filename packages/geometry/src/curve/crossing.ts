import type { Curve } from './curve.ts';
import type { Point } from './point.ts';
import { SAME_LENGTH } from './tolerance.ts';

/**
 * Appends to `out` the points, x and y in turn, where the infinite line or full circle of one curve (its carrier) meets that of
 * another. Exact to rounding.
 *
 * Parallel lines, concentric circles and carriers that miss each other give none. Tangent carriers that rounding parts give
 * none either: a touch changes no order, and an overlap that thin has no area.
 */
export function meetCarriers(p: Curve, q: Curve, out: number[]): void {
  if (p.turn === 0) {
    if (q.turn === 0) meetLines(p, q, out);
    else meetLineAndCircle(p, q, out);
  } else if (q.turn === 0) meetLineAndCircle(q, p, out);
  else meetCircles(p, q, out);
}

/**
 * Points where two curves cross or touch, both ends included, within 1e-9 mm.
 *
 * Curves that overlap along one line or one circle give no points.
 *
 * @example crossings(line(0, 0, 2, 2), line(0, 2, 2, 0)) // [{ x: 1, y: 1 }]
 */
export function crossings(p: Curve, q: Curve): Point[] {
  const found: number[] = [];
  meetCarriers(p, q, found);
  const points: Point[] = [];
  for (let i = 0; i < found.length; i += 2) {
    const x = found[i]!;
    const y = found[i + 1]!;
    if (isOn(p, x, y) && isOn(q, x, y)) points.push({ x, y });
  }
  return points;
}

/** Whether a point that lies on a curve's carrier lies on the curve itself, both ends included, within 1e-9 mm. */
export function isOn(c: Curve, x: number, y: number): boolean {
  if (c.turn === 0) {
    const dx = c.x1 - c.x0;
    const dy = c.y1 - c.y0;
    const length = Math.hypot(dx, dy);
    const along = ((x - c.x0) * dx + (y - c.y0) * dy) / length;
    return along >= -SAME_LENGTH && along <= length + SAME_LENGTH;
  }
  const atStart = Math.hypot(x - c.x0, y - c.y0) <= SAME_LENGTH;
  const atEnd = Math.hypot(x - c.x1, y - c.y1) <= SAME_LENGTH;
  if (atStart || atEnd) return true;
  // Does the arc reach the point's angle before it reaches its end's?
  const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
  const turned = (to: number) => {
    const angle = c.turn * (to - from);
    return angle < 0 ? angle + 2 * Math.PI : angle;
  };
  return turned(Math.atan2(y - c.cy, x - c.cx)) <= turned(Math.atan2(c.y1 - c.cy, c.x1 - c.cx));
}

function meetLines(p: Curve, q: Curve, out: number[]): void {
  const px = p.x1 - p.x0;
  const py = p.y1 - p.y0;
  const qx = q.x1 - q.x0;
  const qy = q.y1 - q.y0;
  const cross = px * qy - py * qx;
  if (cross === 0) return;
  const t = ((q.x0 - p.x0) * qy - (q.y0 - p.y0) * qx) / cross;
  out.push(p.x0 + t * px, p.y0 + t * py);
}

function meetLineAndCircle(l: Curve, c: Curve, out: number[]): void {
  const dx = l.x1 - l.x0;
  const dy = l.y1 - l.y0;
  const length = Math.hypot(dx, dy);
  if (length === 0) return;
  const ux = dx / length;
  const uy = dy / length;
  // Drop the perpendicular from the centre on the line; the points lie half a chord to either side of its foot.
  const off = (l.x0 - c.cx) * uy - (l.y0 - c.cy) * ux;
  const half2 = (c.r - off) * (c.r + off);
  if (half2 < 0) return;
  const half = Math.sqrt(half2);
  const footX = c.cx + off * uy;
  const footY = c.cy - off * ux;
  out.push(footX - half * ux, footY - half * uy);
  if (half > 0) out.push(footX + half * ux, footY + half * uy);
}

function meetCircles(p: Curve, q: Curve, out: number[]): void {
  const dx = q.cx - p.cx;
  const dy = q.cy - p.cy;
  const apart = Math.hypot(dx, dy);
  if (apart === 0) return;
  const ux = dx / apart;
  const uy = dy / apart;
  // Go along the line of centres from p's centre to the common chord; the points lie half the chord to either side.
  const along = (apart + ((p.r - q.r) * (p.r + q.r)) / apart) / 2;
  const half2 = (p.r - along) * (p.r + along);
  if (half2 < 0) return;
  const half = Math.sqrt(half2);
  const midX = p.cx + along * ux;
  const midY = p.cy + along * uy;
  out.push(midX - half * uy, midY + half * ux);
  if (half > 0) out.push(midX + half * uy, midY - half * ux);
}
