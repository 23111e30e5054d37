import { arcAngles } from '../curve/along.ts';
import type { Curve } from '../curve/curve.ts';

/** Control points and end of a cubic Bézier curve. */
export type Bezier = readonly [number, number, number, number, number, number];

/** What a Bézier curve may stray from its arc, mm: a tenth of the finest line that a printer draws. */
const STRAY = 0.002;
/** A quarter circle's best Bézier curve strays by this share of the radius, and for smaller angles by their sixth power. */
const QUARTER_STRAY = 2.8e-4;

/**
 * An arc as cubic Bézier curves, which is all that PDF has: each leaves and arrives along the arc, with control points
 * 4/3·tan(θ/4)·r from its ends (formula G8), as many as keep within 0.002 mm of it.
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
