import { arc, type Chain, line, SAME_LENGTH } from '@fielded/geometry';
import { leastRadii, outlineCurve, spansOpening, steepest, turnsBack, turnsSharply } from './shaped-head-outline.ts';

/** The shaped head of a door's top opening, as its top rail's sight edge shows it, mm; `rise` from the springing to the apex. */
export type ShapedHead =
  | { readonly shape: 'arch'; readonly rise: number }
  | { readonly shape: 'cathedral'; readonly rise: number; readonly crown: number; readonly ears: number }
  /** Any outline, from the left side of the opening (x 0) to the right, y up from its lowest point. */
  | { readonly shape: 'outline'; readonly rise: number; readonly chain: Chain };

/** Radii of a shaped head's edge, mm: one arc for an arch; for a cathedral the crown and the two ears beside it; of any
 * other outline the least of its round and of its hollow arcs, 0 for a hollow corner, null where it has none. */
export type EdgeRadii =
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

/** Radii of a shaped head's parallel `out` mm outside the sight edge (formula A3): round ones grow, hollow ones shrink; `width` the opening's. */
export function edgeRadii(shaped: ShapedHead, width: number, out: number): EdgeRadii {
  if (shaped.shape === 'outline') return leastRadii(shaped.chain, out);
  if (shaped.shape === 'arch') return { radius: archRadius(width, shaped.rise) + out };
  // Ears that have no radius left are a corner.
  return { crown: shaped.crown + out, ears: Math.max(0, shaped.ears - out) };
}

/** The least hollow and the least round radius of an edge, mm; null where it has none. */
export function hollowOf(edge: EdgeRadii): number | null {
  return 'hollow' in edge ? edge.hollow : 'ears' in edge ? edge.ears : null;
}

export function roundOf(edge: EdgeRadii): number | null {
  return 'round' in edge ? edge.round : 'radius' in edge ? edge.radius : edge.crown;
}

/** The least hollow radius of the rail's sight edge, where the panel below is round, mm: 0 for a corner, null where it has none. */
export function railHollow(shaped: ShapedHead, width: number): number | null {
  if (shaped.shape !== 'outline') return roundOf(edgeRadii(shaped, width, 0));
  return turnsSharply(shaped.chain, -1) ? 0 : roundOf(edgeRadii(shaped, width, 0));
}

/** Why a shaped head cannot be drawn in its opening. */
export type ShapedHeadFault =
  | 'rise-past-half-circle'
  | 'rise-past-radii'
  | 'wider-than-opening'
  | 'not-the-opening'
  | 'turns-back';

/** What stands against a shaped head in an opening `width` mm wide; null where nothing does. */
export function findShapedHeadFault(shaped: ShapedHead, width: number): ShapedHeadFault | null {
  if (shaped.shape === 'outline')
    return !spansOpening(shaped.chain, width) ? 'not-the-opening' : turnsBack(shaped.chain) ? 'turns-back' : null;
  if (shaped.shape === 'arch') return shaped.rise > width / 2 + SAME_LENGTH ? 'rise-past-half-circle' : null;
  if (shaped.rise > shaped.crown + shaped.ears + SAME_LENGTH) return 'rise-past-radii';
  return cathedralHalfWidth(shaped) > width / 2 + SAME_LENGTH ? 'wider-than-opening' : null;
}

/**
 * A shaped head's parallel from left to right, `out` mm outside the sight edge (inside it where negative), ended at `half` mm to either
 * side of its middle. Coordinates: x from the opening's middle, y up from the springing, mm; exact lines and arcs.
 *
 * @throws RangeError where the parallel has no radius left or does not reach as far as `half`, and for a parallel of an outline
 * of any shape, which `shapedOutline` takes of the whole panel.
 */
export function shapedCurve(shaped: ShapedHead, width: number, out: number, half: number): Chain {
  if (shaped.shape === 'outline') {
    if (out !== 0) throw new RangeError('the parallel of any outline is taken of the whole panel');
    return outlineCurve(shaped.chain, width, half);
  }
  const right = shaped.shape === 'arch' ? archHalf(shaped, width, out, half) : cathedralHalf(shaped, out, half);
  const left = right.map((c) =>
    c.turn === 0 ? line(-c.x1, c.y1, -c.x0, c.y0) : arc(-c.x1, c.y1, -c.x0, c.y0, -c.cx, c.cy, c.turn),
  );
  return joinAtApex([...left.reverse(), ...right]);
}

/** The right half of an arch, from the apex down. */
function archHalf(shaped: ShapedHead & { shape: 'arch' }, width: number, out: number, half: number): Chain {
  const r = archRadius(width, shaped.rise);
  const radius = r + out;
  const centre = shaped.rise - r;
  if (!(radius > 0)) throw new RangeError(`an arch of radius ${r} has no parallel ${out} mm out`);
  // A side that lies further out than the arch is reached on the level.
  const beyond = arcBeyond(width, shaped.rise) + (width / 2 - half + out);
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
function cathedralHalf(shaped: ShapedHead & { shape: 'cathedral' }, out: number, half: number): Chain {
  const { rise, crown, ears } = shaped;
  const [round, hollow] = [crown + out, ears - out];
  if (!(round > 0 && hollow > 0)) throw new RangeError(`a parallel ${out} mm out has radii of ${round} and ${hollow}`);
  const foot = cathedralHalfWidth(shaped);
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

/** How far a shaped head's edge leans at most: the angle of its normal from the upright, radians. */
export function greatestLean(shaped: ShapedHead, width: number): number {
  if (shaped.shape === 'outline') return steepest(shaped.chain);
  if (shaped.shape === 'arch') return Math.asin(Math.min(1, width / 2 / archRadius(width, shaped.rise)));
  return Math.asin(cathedralHalfWidth(shaped) / (shaped.crown + shaped.ears));
}

/**
 * The gap square to an edge that leans (formula A4): sₙ = s_x·sin ψ + s_y·cos ψ, mm; it then has s_x across the grain and s_y along it.
 *
 * @example squareGap(2, 1, Math.PI / 6) // 1.866
 */
export function squareGap(across: number, along: number, lean: number): number {
  return across * Math.sin(lean) + along * Math.cos(lean);
}
