import { arcAngles } from '../curve/along.ts';
import type { Curve } from '../curve/curve.ts';

/** A cubic Bézier curve from where the one before ends, mm: x and y of its two control points and of its end. */
export type Bezier = readonly [number, number, number, number, number, number];

/** How far a Bézier curve may lie from its arc, mm: a tenth of the finest line that a printer draws. */
const STRAY = 0.002;
/** The distance between a quarter circle and its Bézier curve as a share of the radius; it falls with the sixth power of the angle. */
const QUARTER_STRAY = 2.8e-4;

/**
 * An arc as cubic Bézier curves, the only curves that PDF has: the fewest of equal angle that stay within 0.002 mm of it. Each is
 * tangent to the arc at both ends, its control points at 4/3·tan(θ/4)·r from them (formula G8).
 */
export function arcBeziers(arc: Curve): Bezier[] {
  const { from, sweep } = arcAngles(arc);
  const eachWithin = (Math.PI / 2) * Math.min(1, (STRAY / (QUARTER_STRAY * arc.r)) ** (1 / 6));
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / eachWithin - 1e-9));
  const step = sweep / count;
  const reach = (4 / 3) * Math.tan(step / 4) * arc.r;
  const curves: Bezier[] = [];
  for (let i = 0; i < count; i += 1) {
    const a = from + i * step;
    const b = a + step;
    const last = i === count - 1;
    const x0 = arc.cx + arc.r * Math.cos(a);
    const y0 = arc.cy + arc.r * Math.sin(a);
    const x1 = last ? arc.x1 : arc.cx + arc.r * Math.cos(b);
    const y1 = last ? arc.y1 : arc.cy + arc.r * Math.sin(b);
    curves.push([
      x0 - reach * Math.sin(a),
      y0 + reach * Math.cos(a),
      x1 + reach * Math.sin(b),
      y1 - reach * Math.cos(b),
      x1,
      y1,
    ]);
  }
  return curves;
}
