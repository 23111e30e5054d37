import type { Curve } from '@fielded/geometry';
import type { Box } from './box.ts';
import { growBox, lineMeetsBox } from './box.ts';

// On the paper y grows downwards, so here `turn` +1 means clockwise to the eye: the angle atan2(y, x) grows.

const FULL_TURN = 2 * Math.PI;

/** A straight line. */
export function line(x0: number, y0: number, x1: number, y1: number): Curve {
  return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 };
}

/** The angle at which an arc starts, and how far it turns: positive with growing angle, less than a full turn; both 0 for a line. */
export function arcAngles(curve: Curve): { from: number; sweep: number } {
  if (curve.turn === 0) return { from: 0, sweep: 0 };
  const from = Math.atan2(curve.y0 - curve.cy, curve.x0 - curve.cx);
  const to = Math.atan2(curve.y1 - curve.cy, curve.x1 - curve.cx);
  let sweep = (to - from) * curve.turn;
  if (sweep < 0) sweep += FULL_TURN;
  return { from, sweep: sweep * curve.turn };
}

/** The angles, in the order they are run through, at which the arc passes a multiple of a quarter turn plus `offset`. */
export function quarterAngles(from: number, sweep: number, offset: number): number[] {
  const quarter = Math.PI / 2;
  const found: number[] = [];
  const step = sweep < 0 ? -1 : 1;
  const first = (from - offset) / quarter;
  const last = (from + sweep - offset) / quarter;
  for (let k = step > 0 ? Math.floor(first) + 1 : Math.ceil(first) - 1; (last - k) * step > 0; k += step) {
    found.push(k * quarter + offset);
  }
  return found;
}

/** The point at the fraction `at` (0 to 1) of a curve's length. */
export function pointAt(curve: Curve, at: number): { x: number; y: number } {
  if (curve.turn === 0) return { x: curve.x0 + (curve.x1 - curve.x0) * at, y: curve.y0 + (curve.y1 - curve.y0) * at };
  const { from, sweep } = arcAngles(curve);
  const angle = from + sweep * at;
  return { x: curve.cx + curve.r * Math.cos(angle), y: curve.cy + curve.r * Math.sin(angle) };
}

/** The smallest box round a curve. */
export function curveBox(curve: Curve): Box {
  let x0 = Math.min(curve.x0, curve.x1);
  let y0 = Math.min(curve.y0, curve.y1);
  let x1 = Math.max(curve.x0, curve.x1);
  let y1 = Math.max(curve.y0, curve.y1);
  if (curve.turn !== 0) {
    const { from, sweep } = arcAngles(curve);
    for (const angle of quarterAngles(from, sweep, 0)) {
      const x = curve.cx + curve.r * Math.cos(angle);
      const y = curve.cy + curve.r * Math.sin(angle);
      x0 = Math.min(x0, x);
      y0 = Math.min(y0, y);
      x1 = Math.max(x1, x);
      y1 = Math.max(y1, y);
    }
  }
  return { x0, y0, x1, y1 };
}

/** Whether any of the curve lies inside the box grown by `by`. */
export function curveMeetsBox(curve: Curve, small: Box, by: number = 0): boolean {
  if (curve.turn === 0) return lineMeetsBox(curve.x0, curve.y0, curve.x1, curve.y1, small, by);
  const box = growBox(small, by);
  const inside = (x: number, y: number) => x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1;
  if (inside(curve.x0, curve.y0) || inside(curve.x1, curve.y1)) return true;
  // Neither end is inside: the arc comes in only by crossing a side.
  const { from, sweep } = arcAngles(curve);
  const onArc = (x: number, y: number) => {
    const turned = (Math.atan2(y - curve.cy, x - curve.cx) - from) * curve.turn;
    return ((turned % FULL_TURN) + FULL_TURN) % FULL_TURN <= Math.abs(sweep);
  };
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
      (along) => along > low && along < high && (upright ? onArc(across, along) : onArc(along, across)),
    );
  };
  return (
    crosses(box.x0, curve.cx, curve.cy, box.y0, box.y1, true) ||
    crosses(box.x1, curve.cx, curve.cy, box.y0, box.y1, true) ||
    crosses(box.y0, curve.cy, curve.cx, box.x0, box.x1, false) ||
    crosses(box.y1, curve.cy, curve.cx, box.x0, box.x1, false)
  );
}
