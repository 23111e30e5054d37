import { heightAt, type Piece } from './piece.ts';
import { placeAt, type Thread } from './thread.ts';

/** Area under a boundary (mm²) with its first moments (mm³): `x` about the y axis, `y` about the x axis. */
export interface Moments {
  area: number;
  x: number;
  y: number;
}

/**
 * Adds the area between the x axis and a piece over [xa, xb], with its first moments, to `sum`.
 *
 * Exact: the trapezium under the chord, plus the circular segment between chord and arc (area r²(φ − sin φ)/2, centroid
 * 4·r·sin³(φ/2)/(3(φ − sin φ)) from the centre; formula 2, CRC Standard Mathematical Tables). Both terms keep full
 * relative accuracy for flat arcs of large radius.
 */
export function addMoments(sum: Moments, p: Piece, xa: number, xb: number): void {
  const ya = heightAt(p, xa);
  const yb = heightAt(p, xb);
  const dx = xb - xa;
  sum.area += (dx * (ya + yb)) / 2;
  sum.x += (dx * (xa * (2 * ya + yb) + xb * (ya + 2 * yb))) / 6;
  sum.y += (dx * (ya * ya + ya * yb + yb * yb)) / 6;
  if (p.turn === 0) return;
  const dy = yb - ya;
  const chord = Math.sqrt(dx * dx + dy * dy);
  const area = segmentArea(chord, p.r);
  // An upper arc adds its segment, a lower one takes it away. The segment's own moment about the centre is chord³/12
  // along the normal that points from chord to arc.
  const added = -p.turn;
  const outward = (added * chord * chord) / 12;
  sum.area += added * area;
  sum.x += added * (area * p.cx - outward * dy);
  sum.y += added * (area * p.cy + outward * dx);
}

/** The area under a stretch of a thread, with its first moments. */
export function momentsUnder(thread: Thread, x0: number, x1: number): Moments {
  const sum = { area: 0, x: 0, y: 0 };
  const { pieces, depthFrom } = thread;
  for (let k = placeAt(thread, x0); k < pieces.length; k++) {
    const p = pieces[k]!;
    if (p.x0 >= x1) break;
    addMoments(sum, p, Math.max(p.x0, x0), Math.min(p.x1, x1));
  }
  return depthFrom === null ? sum : lessThanRectangle(sum, depthFrom, x0, x1);
}

/** What a rectangle of the given height over [x0, x1] keeps when the area above the boundary, with depths for heights, goes. */
function lessThanRectangle(depths: Moments, height: number, x0: number, x1: number): Moments {
  const width = x1 - x0;
  return {
    area: height * width - depths.area,
    x: (height * width * (x0 + x1)) / 2 - depths.x,
    // ∫(h − d)²/2 = h²·w/2 − h·∫d + ∫d²/2
    y: (height * height * width) / 2 - height * depths.area + depths.y,
  };
}

/**
 * Area between an arc of at most half a turn and its chord, mm².
 *
 * @example segmentArea(2 * Math.sin(Math.PI / 4), 1) // 0.28540, the 90° segment of the unit circle
 */
export function segmentArea(chord: number, r: number): number {
  const angle = 2 * Math.asin(Math.min(1, chord / (2 * r)));
  return (r * r * angleLessSine(angle)) / 2;
}

/** φ − sin φ, by its series where the subtraction would lose digits. */
function angleLessSine(angle: number): number {
  if (angle > 0.5) return angle - Math.sin(angle);
  const square = angle * angle;
  let term = (angle * square) / 6;
  let sum = term;
  for (let k = 4; Math.abs(term) > 1e-17 * sum && k < 24; k += 2) {
    term *= -square / (k * (k + 1));
    sum += term;
  }
  return sum;
}
