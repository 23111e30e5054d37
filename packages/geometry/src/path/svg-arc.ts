import { type Chain, type Curve, line } from '../curve/curve.ts';
import { SAME_LENGTH } from '../curve/tolerance.ts';
import { fitArcs } from '../fit/fit-arcs.ts';

/** Arcs of a larger radius (mm) look straight, and their centres are too far away to compute with. */
const STRAIGHT_RADIUS = 1e6;

/** The arc of an SVG path's A command: radii in mm, `tilt` in degrees, both flags. */
export interface SvgArc {
  readonly rx: number;
  readonly ry: number;
  readonly tilt: number;
  readonly large: boolean;
  /** Whether the angle grows along the arc in the written coordinates: the curve then has `turn` +1. */
  readonly sweep: boolean;
}

/**
 * The curves that an SVG arc from (x0, y0) to (x1, y1) draws, mm.
 *
 * As SVG 2 says ("Elliptical arc implementation notes"): with a radius of 0 it is a line; radii too small to span the ends are scaled
 * up until they do; an arc that ends where it starts draws nothing. Equal radii give one exact circular arc, others tangent arcs
 * within 0.005 mm. A circular arc that rounding cannot distinguish from its chord becomes the chord.
 */
export function svgArc(x0: number, y0: number, x1: number, y1: number, shape: SvgArc): Chain {
  const chord = Math.hypot(x1 - x0, y1 - y0);
  if (chord <= SAME_LENGTH) return [];
  const rx = Math.abs(shape.rx);
  const ry = Math.abs(shape.ry);
  if (rx === 0 || ry === 0) return [line(x0, y0, x1, y1)];
  if (Math.abs(rx - ry) <= 1e-12 * Math.max(rx, ry)) return [circular(x0, y0, x1, y1, chord, rx, shape)];
  const fitted = elliptical(x0, y0, x1, y1, rx, ry, shape);
  return fitted.map((c, i) => ({
    ...c,
    ...(i === 0 && { x0, y0 }),
    ...(i === fitted.length - 1 && { x1, y1 }),
  }));
}

function circular(x0: number, y0: number, x1: number, y1: number, chord: number, radius: number, arc: SvgArc): Curve {
  const r = Math.max(radius, chord / 2);
  const sagitta = (chord * chord) / (8 * r);
  // A distant centre is known only to the last digit of the radius: an arc flatter than that digit is noise.
  if (!arc.large && r > STRAIGHT_RADIUS && sagitta <= Math.max(SAME_LENGTH, r * 2 ** -50)) return line(x0, y0, x1, y1);
  const off = Math.sqrt(Math.max(0, (r - chord / 2) * (r + chord / 2)));
  const side = arc.large === arc.sweep ? -off / chord : off / chord;
  const cx = (x0 + x1) / 2 - (y1 - y0) * side;
  const cy = (y0 + y1) / 2 + (x1 - x0) * side;
  return { x0, y0, x1, y1, cx, cy, r, turn: arc.sweep ? 1 : -1 };
}

/** An elliptical arc: the ellipse is rotated and scaled to the unit circle, its centre found there as that of a circle, and the arc fitted. */
function elliptical(x0: number, y0: number, x1: number, y1: number, rx: number, ry: number, arc: SvgArc): Chain {
  const cos = Math.cos((arc.tilt * Math.PI) / 180);
  const sin = Math.sin((arc.tilt * Math.PI) / 180);
  const toUnit = (x: number, y: number) => [(x * cos + y * sin) / rx, (y * cos - x * sin) / ry] as const;
  const [u0, v0] = toUnit(x0, y0);
  const [u1, v1] = toUnit(x1, y1);
  // On the unit circle, where is the centre? As in `circular`.
  const half = Math.hypot(u1 - u0, v1 - v0) / 2;
  const r = Math.max(1, half);
  const off = Math.sqrt(Math.max(0, r * r - half * half)) / (2 * half);
  const side = arc.large === arc.sweep ? -off : off;
  const cu = (u0 + u1) / 2 - (v1 - v0) * side;
  const cv = (v0 + v1) / 2 + (u1 - u0) * side;
  // From which angle, and how far, does the arc turn?
  const from = Math.atan2(v0 - cv, u0 - cu);
  let turned = Math.atan2(v1 - cv, u1 - cu) - from;
  if (arc.sweep && turned < 0) turned += 2 * Math.PI;
  if (!arc.sweep && turned > 0) turned -= 2 * Math.PI;
  return fitArcs((share) => {
    const angle = from + share * turned;
    const u = rx * (cu + r * Math.cos(angle));
    const v = ry * (cv + r * Math.sin(angle));
    const du = -rx * r * Math.sin(angle) * turned;
    const dv = ry * r * Math.cos(angle) * turned;
    return { x: u * cos - v * sin, y: u * sin + v * cos, dx: du * cos - dv * sin, dy: du * sin + dv * cos };
  }).chain;
}
