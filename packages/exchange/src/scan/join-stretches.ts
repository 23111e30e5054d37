import { type Curve, line, meetCarriers, type Point } from '@fielded/geometry';

/** Carriers that come this near to a touch, mm, were drawn to touch. */
const TOUCH = 0.035;
/** How far a join may lie from where the points change over, mm; a touch is less certain along the line. */
const NEAR_JOIN = 0.6;
const NEAR_TOUCH = 2.5;

/** Where the first stretch starts at the edge, or the last ends on the face: there its carrier meets x = 0, or meets or touches y = 0. */
export function onLevel(carrier: Curve, end: Point, zero: 'x' | 'y'): Point {
  const level = zero === 'x' ? line(0, end.y - 1, 0, end.y + 1) : line(end.x - 1, 0, end.x + 1, 0);
  const touch = zero === 'y' ? touchOf(level, carrier) : null;
  if (touch !== null && Math.hypot(touch.x - end.x, touch.y - end.y) < NEAR_TOUCH) return touch;
  return nearest(meetings(carrier, level), end, NEAR_JOIN) ?? end;
}

/** Where two neighbours touch, or cross nearest to the place where the points change over; else halfway between them there. */
export function join(before: Curve, next: Curve, near: Point): Point {
  const touch = touchOf(before, next);
  if (touch !== null && Math.hypot(touch.x - near.x, touch.y - near.y) < NEAR_TOUCH) return touch;
  const met = nearest(meetings(before, next), near, NEAR_JOIN);
  if (met !== null) return met;
  const [p, q] = [footOn(before, near), footOn(next, near)];
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
}

function meetings(p: Curve, q: Curve): Point[] {
  const found: number[] = [];
  meetCarriers(p, q, found);
  return found.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: found[i + 1]! }] : []));
}

function nearest(places: readonly Point[], to: Point, within: number): Point | null {
  let best: Point | null = null;
  let least = within;
  for (const place of places) {
    const away = Math.hypot(place.x - to.x, place.y - to.y);
    if (away <= least) {
      best = place;
      least = away;
    }
  }
  return best;
}

/** Where a line touches a circle, or a circle another; null where they clearly cross or miss. A line keeps its place. */
function touchOf(p: Curve, q: Curve): Point | null {
  if (p.turn === 0 && q.turn === 0) return null;
  if (p.turn === 0 || q.turn === 0) {
    const [straight, round] = p.turn === 0 ? [p, q] : [q, p];
    const foot = footOn(straight, { x: round.cx, y: round.cy });
    const away = Math.hypot(foot.x - round.cx, foot.y - round.cy);
    return Math.abs(away - round.r) < TOUCH ? foot : null;
  }
  const apart = Math.hypot(q.cx - p.cx, q.cy - p.cy);
  const outside = p.turn !== q.turn;
  const off = outside ? apart - p.r - q.r : apart - Math.abs(p.r - q.r);
  if (apart === 0 || Math.abs(off) > TOUCH) return null;
  // On the line of centres, halfway between the two circles; on the inside, beyond the smaller one's centre.
  const sign = outside || p.r > q.r ? 1 : -1;
  const [ux, uy] = [(q.cx - p.cx) / apart, (q.cy - p.cy) / apart];
  const alongP = sign * p.r;
  const alongQ = outside ? apart - q.r : apart + sign * q.r;
  const along = (alongP + alongQ) / 2;
  return { x: p.cx + along * ux, y: p.cy + along * uy };
}

function footOn(c: Curve, { x, y }: Point): Point {
  if (c.turn !== 0) {
    const away = Math.hypot(x - c.cx, y - c.cy);
    return { x: c.cx + ((x - c.cx) * c.r) / away, y: c.cy + ((y - c.cy) * c.r) / away };
  }
  const [dx, dy] = [c.x1 - c.x0, c.y1 - c.y0];
  const t = ((x - c.x0) * dx + (y - c.y0) * dy) / (dx * dx + dy * dy);
  return { x: c.x0 + t * dx, y: c.y0 + t * dy };
}
