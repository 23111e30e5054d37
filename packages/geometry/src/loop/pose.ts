import type { Curve } from '../curve/curve.ts';
import type { Loop } from './loop.ts';

/**
 * How wood coordinates are placed on the paper: (x, y) goes to (xx·x + xy·y + x0, yx·x + yy·y + y0). It scales evenly, and rotates or
 * mirrors; it must not skew, or arcs would not stay arcs.
 */
export interface Pose {
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
  readonly x0: number;
  readonly y0: number;
}

/** A point of the wood on the paper. */
export function posePoint(pose: Pose, x: number, y: number): { x: number; y: number } {
  return { x: pose.xx * x + pose.xy * y + pose.x0, y: pose.yx * x + pose.yy * y + pose.y0 };
}

/** A direction in the wood, radians, as it lies on the paper. */
export function poseDirection(pose: Pose, angle: number): number {
  const dx = Math.cos(angle);
  const dy = Math.sin(angle);
  return Math.atan2(pose.yx * dx + pose.yy * dy, pose.xx * dx + pose.xy * dy);
}

/** Loops of the wood as they lie on the paper; arcs stay arcs. */
export function poseLoops(pose: Pose, loops: readonly Loop[]): Loop[] {
  const determinant = pose.xx * pose.yy - pose.xy * pose.yx;
  const scale = Math.sqrt(Math.abs(determinant));
  return loops.map(({ closed, curves }) => ({
    closed,
    curves: curves.map((curve) => {
      const from = posePoint(pose, curve.x0, curve.y0);
      const to = posePoint(pose, curve.x1, curve.y1);
      const centre = posePoint(pose, curve.cx, curve.cy);
      const turn = (determinant < 0 && curve.turn !== 0 ? -curve.turn : curve.turn) as Curve['turn'];
      return { x0: from.x, y0: from.y, x1: to.x, y1: to.y, cx: centre.x, cy: centre.y, r: curve.r * scale, turn };
    }),
  }));
}
