import { type Box, growBox, lineMeetsBox } from './box.ts';
import { isOn } from './crossing.ts';
import type { Curve } from './curve.ts';

/** The smallest axis-parallel box that contains a curve, mm. Exact to rounding. */
export function curveBox(c: Curve): Box {
  let x0 = Math.min(c.x0, c.x1);
  let x1 = Math.max(c.x0, c.x1);
  let y0 = Math.min(c.y0, c.y1);
  let y1 = Math.max(c.y0, c.y1);
  if (c.turn !== 0) {
    if (passes(c, -c.r, 0)) x0 = c.cx - c.r;
    if (passes(c, c.r, 0)) x1 = c.cx + c.r;
    if (passes(c, 0, -c.r)) y0 = c.cy - c.r;
    if (passes(c, 0, c.r)) y1 = c.cy + c.r;
  }
  return { x0, y0, x1, y1 };
}

/** Whether some point of a curve lies inside the box grown by `by` mm. Exact to rounding. */
export function curveMeetsBox(curve: Curve, small: Box, by: number = 0): boolean {
  if (curve.turn === 0) return lineMeetsBox(curve.x0, curve.y0, curve.x1, curve.y1, small, by);
  const box = growBox(small, by);
  const inside = (x: number, y: number) => x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1;
  if (inside(curve.x0, curve.y0) || inside(curve.x1, curve.y1)) return true;
  // Neither end is inside, so the arc enters only where it crosses a side. Does it cross one of the four?
  const crosses = (
    across: number,
    centreAcross: number,
    centreAlong: number,
    low: number,
    high: number,
    upright: boolean,
  ) => {
    const square = curve.r * curve.r - (across - centreAcross) ** 2;
    if (square <= 0) return false;
    const half = Math.sqrt(square);
    return [centreAlong - half, centreAlong + half].some(
      (along) => along > low && along < high && (upright ? isOn(curve, across, along) : isOn(curve, along, across)),
    );
  };
  return (
    crosses(box.x0, curve.cx, curve.cy, box.y0, box.y1, true) ||
    crosses(box.x1, curve.cx, curve.cy, box.y0, box.y1, true) ||
    crosses(box.y0, curve.cy, curve.cx, box.x0, box.x1, false) ||
    crosses(box.y1, curve.cy, curve.cx, box.x0, box.x1, false)
  );
}

/** Whether an arc passes the point of its circle that lies (dx, dy) from the centre: that point then lies beyond the chord. */
function passes(c: Curve, dx: number, dy: number): boolean {
  const side = (c.x1 - c.x0) * (c.cy + dy - c.y0) - (c.y1 - c.y0) * (c.cx + dx - c.x0);
  return c.turn * side < 0;
}
