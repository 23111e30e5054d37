import { arc, arcAngle, type Chain, type Curve, curvesBetween, line, shiftCurve } from '@fielded/geometry';

/** The shaped head of a door's top opening, as its top rail's sight edge shows it, mm; `rise` from the springing to the apex. */
export type DoorHead =
  | { readonly shape: 'arch'; readonly rise: number }
  | { readonly shape: 'cathedral'; readonly rise: number; readonly crown: number; readonly ears: number }
  /** Any outline, from the left side of the opening (x 0) to the right, y up from its lowest point. */
  | { readonly shape: 'outline'; readonly rise: number; readonly chain: Chain };

/** Radii of a head's edge, mm: one arc for an arch; for a cathedral the crown and the two ears beside it; of any
 * other outline the least of its round and of its hollow arcs, 0 for a hollow corner, null where it has none. */
export type HeadRadii =
  | { readonly radius: number }
  | { readonly crown: number; readonly ears: number }
  | { readonly round: number | null; readonly hollow: number | null };

/**
 * Radius of the arc over a chord (formula A1): r = (c²/4 + h²)/(2h), mm.
 *
 * @example archRadius(480, 60) // 510
 */
export function archRadius(chord: number, rise: number): number {
  return (chord ** 2 / 4 + rise ** 2) / (2 * rise);
}

/**
 * Half the width of a cathedral's curved part (formula A2): √(h(2(r₁ + r₂) − h)), mm, for a crown r₁ and ears r₂ that run into
 * each other and, level, into the flats beside them. NaN for a rise of more than twice both radii.
 *
 * @example cathedralHalfWidth({ rise: 60, crown: 120, ears: 80 }) // 142.829
 */
export function cathedralHalfWidth({ rise, crown, ears }: { rise: number; crown: number; ears: number }): number {
  return Math.sqrt(rise * (2 * (crown + ears) - rise));
}

/** Radii of the head's parallel `out` mm outside the sight edge (formula A3): round ones grow, hollow ones shrink; `width` the opening's. */
export function headRadii(head: DoorHead, width: number, out: number): HeadRadii {
  if (head.shape === 'outline') return leastRadii(head.chain, out);
  if (head.shape === 'arch') return { radius: archRadius(width, head.rise) + out };
  // Ears that have no radius left are a corner.
  return { crown: head.crown + out, ears: Math.max(0, head.ears - out) };
}

/** The least hollow and the least round radius of an edge, mm; null where it has none. */
export function hollowOf(edge: HeadRadii): number | null {
  return 'hollow' in edge ? edge.hollow : 'ears' in edge ? edge.ears : null;
}

export function roundOf(edge: HeadRadii): number | null {
  return 'round' in edge ? edge.round : 'radius' in edge ? edge.radius : edge.crown;
}

/** The least hollow radius of the rail's sight edge, where the panel below is round, mm: 0 for a corner, null where it has none. */
export function railHollow(head: DoorHead, width: number): number | null {
  if (head.shape !== 'outline') return roundOf(headRadii(head, width, 0));
  return turnsSharply(head.chain, -1) ? 0 : roundOf(headRadii(head, width, 0));
}

/** Why a head cannot be drawn in its opening. */
export type HeadFault =
  | 'rise-past-half-circle'
  | 'rise-past-radii'
  | 'wider-than-opening'
  | 'not-the-opening'
  | 'turns-back';

/** What stands against a head in an opening `width` mm wide; null where nothing does. */
export function findHeadFault(head: DoorHead, width: number): HeadFault | null {
  if (head.shape === 'outline')
    return !spansOpening(head.chain, width) ? 'not-the-opening' : turnsBack(head.chain) ? 'turns-back' : null;
  if (head.shape === 'arch') return head.rise > width / 2 ? 'rise-past-half-circle' : null;
  if (head.rise > head.crown + head.ears) return 'rise-past-radii';
  return cathedralHalfWidth(head) > width / 2 ? 'wider-than-opening' : null;
}

/**
 * A head's parallel from left to right, `out` mm outside the sight edge (inside it where negative), ended at `half` mm to either
 * side of its middle. Coordinates: x from the opening's middle, y up from the springing, mm; exact lines and arcs.
 *
 * @throws RangeError where the parallel has no radius left or does not reach as far as `half`, and for a parallel of an outline
 * of any shape, which `shapedOutline` takes of the whole panel.
 */
export function headCurve(head: DoorHead, width: number, out: number, half: number): Chain {
  if (head.shape === 'outline') {
    if (out !== 0) throw new RangeError('the parallel of any outline is taken of the whole panel');
    return outlineCurve(head.chain, width, half);
  }
  const right = head.shape === 'arch' ? archHalf(head, width, out, half) : cathedralHalf(head, out, half);
  const left = right.map((c) =>
    c.turn === 0 ? line(-c.x1, c.y1, -c.x0, c.y0) : arc(-c.x1, c.y1, -c.x0, c.y0, -c.cx, c.cy, c.turn),
  );
  return joinAtApex([...left.reverse(), ...right]);
}

/** The right half of an arch, from the apex down. */
function archHalf(head: DoorHead & { shape: 'arch' }, width: number, out: number, half: number): Chain {
  const r = archRadius(width, head.rise);
  const radius = r + out;
  const centre = head.rise - r;
  if (!(radius > 0)) throw new RangeError(`an arch of radius ${r} has no parallel ${out} mm out`);
  // A side that lies further out than the arch is reached on the level.
  const beyond = arcBeyond(width, head.rise) + (width / 2 - half + out);
  if (beyond < 0) return [arc(0, centre + radius, radius, centre, 0, centre, -1), line(radius, centre, half, centre)];
  return [arc(0, centre + radius, half, centre + Math.sqrt(beyond * (radius + half)), 0, centre, -1)];
}

/**
 * How far an arch's radius is longer than half its chord: r − c/2 = (c/2 − h)²/(2h), mm. As a difference of r² and c²/4 it would
 * lose half its digits under an arch of half a circle, and put its springing up to 5e-6 mm out of place.
 */
function arcBeyond(chord: number, rise: number): number {
  return (chord / 2 - rise) ** 2 / (2 * rise);
}

/** The right half of a cathedral, from the apex down to the flat; ended early where `half` is short. */
function cathedralHalf(head: DoorHead & { shape: 'cathedral' }, out: number, half: number): Chain {
  const { rise, crown, ears } = head;
  const [round, hollow] = [crown + out, ears - out];
  if (!(round > 0 && hollow > 0)) throw new RangeError(`a parallel ${out} mm out has radii of ${round} and ${hollow}`);
  const foot = cathedralHalfWidth(head);
  const centre = rise - crown;
  // Crown and ear touch on the line between their centres, whatever the parallel.
  const ux = foot / (crown + ears);
  const uy = (ears - centre) / (crown + ears);
  const [tx, ty] = [round * ux, centre + round * uy];
  if (half <= tx) return [arc(0, centre + round, half, centre + Math.sqrt(round ** 2 - half ** 2), 0, centre, -1)];
  const crownArc = arc(0, centre + round, tx, ty, 0, centre, -1);
  if (half <= foot)
    return [crownArc, arc(tx, ty, half, ears - Math.sqrt(hollow ** 2 - (foot - half) ** 2), foot, ears, 1)];
  const ear = arc(tx, ty, foot, out, foot, ears, 1);
  return half - foot > 1e-9 ? [crownArc, ear, line(foot, out, half, out)] : [crownArc, ear];
}

/** The two arcs that meet at the apex as one. */
function joinAtApex(chain: Chain): Chain {
  const k = chain.length / 2;
  const [left, right] = [chain[k - 1]!, chain[k]!];
  const whole = arc(left.x0, left.y0, right.x1, right.y1, left.cx, left.cy, -1);
  return [...chain.slice(0, k - 1), whole, ...chain.slice(k + 1)];
}

/** How far the head's edge leans at most: the angle of its normal from the upright, radians. */
export function greatestLean(head: DoorHead, width: number): number {
  if (head.shape === 'outline') return steepest(head.chain);
  if (head.shape === 'arch') return Math.asin(Math.min(1, width / 2 / archRadius(width, head.rise)));
  return Math.asin(cathedralHalfWidth(head) / (head.crown + head.ears));
}

/**
 * The gap square to an edge that leans (formula A4): sₙ = s_x·sin ψ + s_y·cos ψ, mm; it then has s_x across the grain and s_y along it.
 *
 * @example squareGap(2, 1, Math.PI / 6) // 1.866
 */
export function squareGap(across: number, along: number, lean: number): number {
  return across * Math.sin(lean) + along * Math.cos(lean);
}

/** How far, mm, an outline may miss the sides of its opening: what a drawing rounds. */
const ROUNDED = 0.01;

/** Whether an outline runs from one side of an opening to the other and stays between them. */
function spansOpening(chain: Chain, width: number): boolean {
  const [first, last] = [chain[0], chain[chain.length - 1]];
  if (first === undefined || last === undefined) return false;
  const inside = curvesBetween([{ curves: chain, closed: false }], -ROUNDED, width + ROUNDED);
  return Math.abs(first.x0) <= ROUNDED && Math.abs(last.x1 - width) <= ROUNDED && inside.length === chain.length;
}

/** A heading past the upright by less, radians, is what a drawing rounds. */
const UPRIGHT = 1e-3;

/** Whether an outline goes back towards the left anywhere: its rail would hook under the panel and could not be put on. */
function turnsBack(chain: Chain): boolean {
  return chain.some((c) => {
    const from = heading(c, 'start');
    // An arc turns steadily: it goes back nowhere if neither of its ends does, less than a whole turn apart.
    const to = c.turn === 0 ? from : from + c.turn * arcAngle(c);
    const start = Math.atan2(Math.sin(from), Math.cos(from));
    return Math.max(Math.abs(start), Math.abs(start + to - from)) > Math.PI / 2 + UPRIGHT;
  });
}

/** Any outline as it is, run on along its first and last piece or cut off there. */
function outlineCurve(chain: Chain, width: number, half: number): Chain {
  const own = chain.map((c) => shiftCurve(c, -width / 2, 0));
  const [first, last] = [own[0]!, own[own.length - 1]!];
  if (last.x1 < half) own.splice(-1, 1, ...runOn(last, half, 'end'));
  if (first.x0 > -half) own.splice(0, 1, ...runOn(own[0]!, -half, 'start'));
  return curvesBetween([{ curves: own, closed: false }], -half - 1e-9, half + 1e-9);
}

/** A piece run on along its own line or circle to the upright at `x`; on the level where that does not reach so far. */
function runOn(c: Curve, x: number, which: 'start' | 'end'): Curve[] {
  const y = c.turn === 0 ? lineAt(c, x) : circleAt(c, x, which === 'start' ? c.y0 : c.y1);
  const reaches = Number.isFinite(y);
  if (which === 'start') return reaches ? [{ ...c, x0: x, y0: y }] : [line(x, c.y0, c.x0, c.y0), c];
  return reaches ? [{ ...c, x1: x, y1: y }] : [c, line(c.x1, c.y1, x, c.y1)];
}

function lineAt({ x0, y0, x1, y1 }: Curve, x: number): number {
  return y0 + ((x - x0) * (y1 - y0)) / (x1 - x0);
}

/** On the half of the circle, upper or lower, that the piece ends on. */
function circleAt({ cx, cy, r }: Curve, x: number, near: number): number {
  return cy + Math.sign(near - cy || 1) * Math.sqrt(r * r - (x - cx) ** 2);
}

/** The heading of a curve at its start or its end, radians. */
function heading(c: Curve, which: 'start' | 'end'): number {
  if (c.turn === 0) return Math.atan2(c.y1 - c.y0, c.x1 - c.x0);
  const [x, y] = which === 'start' ? [c.x0, c.y0] : [c.x1, c.y1];
  return Math.atan2(y - c.cy, x - c.cx) + (c.turn * Math.PI) / 2;
}

/** Corners sharper than this, radians, are corners. */
const CORNER = 1e-4;

/** The least radii of an outline's parallel: to the left of it lies the rail, so what turns left is hollow in the panel. */
function leastRadii(chain: Chain, out: number): HeadRadii {
  const least = (turn: -1 | 1): number | null => {
    const radii = chain.filter((c) => c.turn === turn).map((c) => c.r - turn * out);
    return radii.length === 0 ? null : Math.min(...radii);
  };
  return { round: least(-1), hollow: turnsSharply(chain, 1) ? 0 : least(1) };
}

/** Whether an outline has a corner that turns left (1) or right (−1). */
function turnsSharply(chain: Chain, way: -1 | 1): boolean {
  return chain.some((c, i) => {
    const before = chain[i - 1];
    return before !== undefined && way * Math.sin(heading(c, 'start') - heading(before, 'end')) > CORNER;
  });
}

/** The steepest slope of an outline, radians from the level. */
function steepest(chain: Chain): number {
  const slopes = chain.flatMap((c) => {
    const ends = [heading(c, 'start'), heading(c, 'end')];
    return ends.map((angle) => Math.asin(Math.min(1, Math.abs(Math.sin(angle)))));
  });
  return Math.max(0, ...slopes);
}
