import type { Point } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import type { LinearDimension, Side } from '../dimension/linear.ts';

/** A figure dimensioned on a side of a drawing, between two points on the paper. */
export function tier(side: Side, figure: Figure, from: Point, to: Point): LinearDimension {
  return { ...figure, side, from, to };
}
