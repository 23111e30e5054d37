import { type Curve, pointAt } from '@fielded/geometry';
import type { Figure } from './figure.ts';
import type { LeaderDimension, LeaderTarget } from './leader.ts';

const SHARES: readonly number[] = [
  0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.1, 0.9,
];

/** A radius: a leader square to the arc, from within or from without, its arrow on the arc (ISO 129-1). */
export function radiusDimension(figure: Figure, arc: Curve): LeaderDimension {
  const targets = SHARES.map((share): LeaderTarget => {
    const { x, y } = pointAt(arc, share);
    const outward = Math.atan2(y - arc.cy, x - arc.cx);
    return { x, y, directions: [outward, outward + Math.PI] };
  });
  return { ...figure, targets, arrow: true };
}
