import type { Chain, Curve } from './curve.ts';

/** The box round a curve or a chain, mm. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** The smallest upright box round a curve, an arc's outermost points included. Exact to rounding. */
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

/** How far in a chain in cut coordinates reaches from the edge, and how deep it goes below the face, mm. */
export function chainExtent(chain: Chain): { readonly reach: number; readonly depth: number } {
  let reach = Number.NEGATIVE_INFINITY;
  let depth = Number.NEGATIVE_INFINITY;
  for (const c of chain) {
    const box = curveBox(c);
    if (box.x1 > reach) reach = box.x1;
    if (box.y1 > depth) depth = box.y1;
  }
  return { reach, depth };
}

/** Whether an arc passes the point of its circle that lies (dx, dy) from the centre: is it beyond the chord? */
function passes(c: Curve, dx: number, dy: number): boolean {
  const side = (c.x1 - c.x0) * (c.cy + dy - c.y0) - (c.y1 - c.y0) * (c.cx + dx - c.x0);
  return c.turn * side < 0;
}
