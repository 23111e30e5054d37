import { heightAt, type Piece } from '../curve/piece.ts';
import { lastPlace, placeAt, type Thread } from './thread.ts';

/** The area under a boundary (mm²) and its first moments (mm³): `x` is ∫x dA, `y` is ∫y dA. */
export interface Moments {
  area: number;
  x: number;
  y: number;
}

/**
 * Adds to `sum` the area between the x axis and a piece over [xa, xb], with its first moments.
 *
 * Exact to rounding: the trapezium under the chord, plus the circular segment between chord and arc (area r²(φ − sin φ)/2, centroid
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
  const square = dx * dx + dy * dy;
  // An arc on the upper half adds its segment to the trapezium, one on the lower half subtracts it. The segment's moment about
  // the centre is chord³/12, along the normal that points from the chord to the arc: upwards where the segment is added, downwards
  // where it is subtracted, so that the sum has the same sign in both cases.
  const area = -p.turn * segmentOn(square, p.r);
  const upward = square / 12;
  sum.area += area;
  sum.x += area * p.cx - upward * dy;
  sum.y += area * p.cy + upward * dx;
}

/** Adds what `addMoments` adds for each whole piece from place `from` up to, but not including, place `to`: one loop with local sums, fast for threads of thousands of pieces. */
function addWholePieces(sum: Moments, pieces: readonly Piece[], from: number, to: number): void {
  let { area, x, y } = sum;
  for (let k = from; k < to; k++) {
    const { x0, y0, x1, y1, turn, r, cx, cy } = pieces[k]!;
    const dx = x1 - x0;
    const heights = y0 + y1;
    area += (dx * heights) / 2;
    x += (dx * (x0 * (heights + y0) + x1 * (heights + y1))) / 6;
    y += (dx * (heights * heights - y0 * y1)) / 6;
    if (turn === 0) continue;
    const dy = y1 - y0;
    const square = dx * dx + dy * dy;
    const segment = turn * segmentOn(square, r);
    const upward = square / 12;
    area -= segment;
    x -= segment * cx + upward * dy;
    y -= segment * cy - upward * dx;
  }
  sum.area = area;
  sum.x = x;
  sum.y = y;
}

/** The area between the x axis and a thread over [x0, x1], with its first moments. */
export function momentsUnder(thread: Thread, x0: number, x1: number): Moments {
  const sum = { area: 0, x: 0, y: 0 };
  const { pieces, depthFrom } = thread;
  const first = placeAt(thread, x0);
  const last = lastPlace(thread, first, x1);
  // The first and the last piece may lie partly outside; those between are whole.
  if (pieces[first]!.x0 < x1)
    addMoments(sum, pieces[first]!, Math.max(pieces[first]!.x0, x0), Math.min(pieces[first]!.x1, x1));
  addWholePieces(sum, pieces, first + 1, last);
  if (last > first) addMoments(sum, pieces[last]!, pieces[last]!.x0, Math.min(pieces[last]!.x1, x1));
  return depthFrom === null ? sum : lessThanRectangle(sum, depthFrom, x0, x1);
}

/** The moments under a boundary that is given by its depths below `height`: those of the rectangle over [x0, x1] less those of the depths. */
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
 * The area of a circular segment, between an arc of at most half a turn and its chord, mm².
 *
 * @example segmentArea(2 * Math.sin(Math.PI / 4), 1) // 0.28540, the 90° segment of the unit circle
 */
export function segmentArea(chord: number, r: number): number {
  return segmentOn(chord * chord, r);
}

/**
 * The area of a circular segment, mm², from the square of its chord.
 *
 * With s = chord/2r the area is r²·f(s), f(s) = asin s − s·√(1 − s²), which is half of φ − sin φ at φ = 2·asin s. The subtraction
 * loses digits for flat arcs, so up to s = 1/4 the power series of f is summed instead (from f′ = 2s²/√(1 − s²)). Exact to rounding
 * there, and to 6e-15 of the area beyond.
 */
function segmentOn(square: number, r: number): number {
  const share = square / (4 * r * r);
  const chord = Math.sqrt(square);
  if (share <= SERIES_UP_TO) return ((square * chord) / (8 * r)) * segmentSeries(share);
  const s = Math.min(1, chord / (2 * r));
  return r * r * (Math.asin(s) - s * Math.sqrt(Math.max(0, 1 - share)));
}

/** At s² = 1/16 the first term left out is 6e-17 of the sum. */
const SERIES_UP_TO = 1 / 16;

/** Σ 2·C(2k, k)/(4^k·(2k + 3))·u^k for k = 0 … 11. Even and odd powers are summed separately, so that the processor can work on both at once. */
function segmentSeries(u: number): number {
  const u2 = u * u;
  const even =
    2 / 3 + u2 * (3 / 28 + u2 * (35 / 704 + u2 * (77 / 2560 + u2 * (6435 / 311296 + u2 * (46189 / 3014656)))));
  const odd =
    1 / 5 + u2 * (5 / 72 + u2 * (63 / 1664 + u2 * (429 / 17408 + u2 * (12155 / 688128 + u2 * (88179 / 6553600)))));
  return even + u * odd;
}
